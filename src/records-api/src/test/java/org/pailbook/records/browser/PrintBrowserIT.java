package org.pailbook.records.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.records.problem.PackagedService;

/** Lists and a cow printed: what is taken to the barn is whole, says of which day it is, and holds nothing that is of use on a screen only. */
@Tag("contract")
class PrintBrowserIT {
    private static final double POINTS_PER_MM = 72 / 25.4;
    /** Links, buttons and folded parts: nobody presses them on paper. */
    private static final List<String> ON_A_SCREEN_ONLY = List.of(
            "Bring in a file",
            "Settings",
            "Show this day",
            "Sign out",
            "Show lb",
            "Put in a cow",
            "How this was made",
            "The curve as numbers",
            "The same as a table");

    private static Browser browser;

    @BeforeAll
    static void signIn() throws IOException {
        browser = Browser.startOrSkip(ShownService.withSampleHerd().address());
        browser.signIn(PackagedService.KEY);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "cow, '/animals/example.eartag%3APT-BA-0355', PT-BA-0355, 1, 3",
        "herd, '', Quinta do Brejo Alto, 1, 4",
        "milk-withheld, /lists/milk-withheld, Milk not for the tank, 1, 1",
        "to-breed, /lists/to-breed, To breed, 1, 1",
        "due-to-dry-off, /lists/due-to-dry-off, To dry off, 1, 1",
        "culling, /lists/culling, Keep or replace, 5, 9",
        "projections, /projections, Projections, 2, 5"
    })
    void aPageIsPrintedOnPaperOfA4WithoutWhatIsOfUseOnAScreenOnly(
            String name, String path, String heading, int fewestSheets, int mostSheets) throws IOException {
        browser.open(PageAddresses.HERD + path + "?asOf=" + PageAddresses.DAY);
        byte[] pdf = browser.printed();
        Files.write(Files.createDirectories(Path.of("target", "browser")).resolve(name + ".pdf"), pdf);
        try (PDDocument printed = Loader.loadPDF(pdf)) {
            assertThat(printed.getNumberOfPages()).isBetween(fewestSheets, mostSheets);
            // A4 is 210 mm by 297 mm (ISO 216)
            assertThat(printed.getPage(0).getMediaBox().getWidth())
                    .isCloseTo((float) (210 * POINTS_PER_MM), within(1f));
            assertThat(printed.getPage(0).getMediaBox().getHeight())
                    .isCloseTo((float) (297 * POINTS_PER_MM), within(1f));
            String words = new PDFTextStripper().getText(printed).replaceAll("\\s+", " ");
            assertThat(words)
                    .contains(heading, PageAddresses.DAY, "Quinta do Brejo Alto")
                    .doesNotContain(ON_A_SCREEN_ONLY);
            PDFTextStripper lastSheet = new PDFTextStripper();
            lastSheet.setStartPage(printed.getNumberOfPages());
            assertThat(lastSheet.getText(printed).strip()).as("the last sheet").isNotEmpty();
        }
    }
}
