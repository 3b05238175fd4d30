package org.pailbook.records.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The checks of pages find what they are there for: tried on a page with one fault of each kind. */
@Tag("contract")
class ChecksBrowserIT {
    private static final String FAULTY = """
            <!DOCTYPE html><html lang="en"><head><title>Faulty</title></head><body><h1>Faulty</h1>
            <img src="http://127.0.0.1:9/elsewhere.png">
            <p style="color:#ccc">pale</p>
            <a href="#a" style="outline:none">not seen to be reached</a>
            <button onfocus="this.blur()">refuses the focus</button>
            <p style="width:900px">wide</p>
            <script>console.error('a fault')</script>
            </body></html>
            """;

    @Test
    void eachCheckFindsItsFault(@TempDir Path folder) throws IOException {
        Path page = Files.writeString(folder.resolve("faulty.html"), FAULTY);
        try (Browser browser = Browser.startOrSkip("file://" + folder)) {
            browser.screen(360, 640, 1);
            browser.open("/" + page.getFileName());
            assertThat(browser.complaints()).anyMatch(said -> said.contains("a fault"));
            assertThat(browser.requestsToElsewhere()).containsExactly("http://127.0.0.1:9/elsewhere.png");
            assertThat(browser.widerThanTheScreen()).isPositive();
            assertThat(browser.axe())
                    .anyMatch(found -> found.contains("image-alt"))
                    .anyMatch(found -> found.contains("color-contrast"));
            assertThat(browser.keyboardWalk())
                    .hasSize(2)
                    .anyMatch(missed -> missed.startsWith("focus not seen: <a"))
                    .anyMatch(missed -> missed.startsWith("not reached: <button"));
        }
    }
}
