package org.pailbook.records.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.pailbook.records.problem.PackagedService;

/** Files brought in with a browser, as a person does it. */
@Tag("contract")
class ImportBrowserIT {
    /** More than the service takes in while the answer waits for it, on a fast machine too. */
    private static final int ROWS_OF_A_LONG_FILE = 120_000;

    private static Path data;
    private static PackagedService service;
    private Browser browser;

    @BeforeAll
    static void start() throws IOException {
        data = Files.createTempDirectory(Files.createDirectories(Path.of("target", "browser")), "import");
        service = ShownService.empty(data);
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    @AfterEach
    void close(TestInfo test) throws IOException {
        if (browser != null) {
            browser.picture(Path.of(
                    "target", "browser", test.getTestMethod().orElseThrow().getName() + ".png"));
            browser.close();
        }
    }

    private void open(WrittenHerd herd) {
        browser = Browser.startOrSkip(service.address());
        browser.signIn(PackagedService.KEY);
        browser.open(herd.page("/import"));
    }

    private void choose(String name, String text) throws IOException {
        Path file = Files.writeString(data.resolve(name), text, StandardCharsets.UTF_8);
        browser.driver()
                .findElement(By.id("file"))
                .sendKeys(file.toAbsolutePath().toString());
        browser.press("Look at it");
    }

    private void say(int column, String value) {
        browser.driver()
                .findElement(By.cssSelector("#col-" + column + " option[value='" + value + "']"))
                .click();
    }

    private void answer(String question, String value) {
        browser.driver()
                .findElement(By.cssSelector("input[name='" + question + "'][value='" + value + "']"))
                .click();
    }

    private String chosen(int column) {
        WebElement option = browser.driver().findElement(By.cssSelector("#col-" + column + " option:checked"));
        return option.getDomProperty("value");
    }

    private void soundAtEveryWidth() throws IOException {
        for (int width : new int[] {360, 1280}) {
            browser.screen(width, 900, 1);
            assertThat(browser.widerThanTheScreen()).as("at " + width).isZero();
            assertThat(browser.axe()).as("at " + width).isEmpty();
        }
        // a form with something left to answer is answered with 422, of which the browser complains by itself
        assertThat(browser.complaints())
                .filteredOn(said -> !said.contains("status of 422"))
                .isEmpty();
    }

    @Test
    void aFileIsBroughtInWithItsUnitsAskedAndItsMeaningIsRememberedForTheNext() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "file").withCows("7", "8");
        open(herd);
        soundAtEveryWidth();
        choose("first.csv", "Cow;Day of weighing;Scale\n7;12.11.2025;62,4\n8;13.11.2025;58,1\n9;13.11.2025;60\n");
        assertThat(browser.words()).contains("What the columns are", "12.11.2025 | 13.11.2025");
        browser.driver()
                .findElement(By.cssSelector("#kind option[value='test-days']"))
                .click();
        browser.press("Show the columns for it");
        say(0, "animal_id");
        say(1, "date");
        say(2, "milk_kg");
        browser.press("See how the rows would fare");
        assertThat(browser.words())
                .contains("Still to be answered: In which unit is the column \"Scale\"?", "from 58.1 to 62.4");
        soundAtEveryWidth();
        answer("unit.milk_kg", "lb");
        browser.press("See how the rows would fare");
        browser.waitForWords("Nothing is stored yet.");
        assertThat(browser.words()).contains("Milk, kg, from pounds", "28.304", "is not known in this herd");
        soundAtEveryWidth();
        assertThat(herd.records("test-days", "2025-11-12")).isEmpty();
        browser.press("Take rows: 2");
        browser.waitForWords("What was not refused is stored.");
        assertThat(herd.records("test-days", "2025-11-12")
                        .get(0)
                        .at("/record/milkKg")
                        .asDouble())
                .isEqualTo(28.304);
        browser.open(herd.page("/import"));
        choose("second.csv", "Scale;Cow;Day of weighing\n61,8;7;14.12.2025\n");
        assertThat(browser.words()).contains("As you said the last time");
        assertThat(chosen(0) + chosen(1) + chosen(2)).isEqualTo("milk_kganimal_iddate");
        assertThat(browser.driver()
                        .findElement(By.cssSelector("input[name='unit.milk_kg']:checked"))
                        .getDomProperty("value"))
                .isEqualTo("lb");
    }

    @Test
    void aFileThatIsNoTableIsRefusedInWordsAndAnotherCanBeChosen() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "bad").withCows("7");
        open(herd);
        choose("book.csv", "PK\u0003\u0004 a workbook by another name");
        assertThat(browser.words()).contains("This is a workbook, whatever its name says.");
        // the browser itself tells of every answer that refuses something
        assertThat(browser.complaints())
                .filteredOn(said -> !said.contains("422"))
                .isEmpty();
        choose("empty.csv", "");
        assertThat(browser.words()).contains("The file is empty.");
        choose("cut.csv", "tag,date,milk\n7,2025-11-12,\"27.4\n");
        assertThat(browser.words()).contains("Line 2: A quotation mark");
        choose("good.csv", "tag,date,milk\n7,2025-11-12,27.4\n");
        browser.press("See how the rows would fare");
        browser.waitForWords("Nothing is stored yet.");
        browser.press("Take rows: 1");
        browser.waitForWords("What was not refused is stored.");
        assertThat(herd.records("test-days", "2025-11-12")).hasSize(1);
    }

    @Test
    void aLongFileShowsHowFarItIsAndThenWhatBecameOfIt() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "long").withCows("7");
        open(herd);
        StringBuilder text = new StringBuilder("tag,started at,milking,milk\n");
        java.time.LocalDateTime at = java.time.LocalDateTime.of(2001, 1, 1, 6, 0);
        for (int row = 0; row < ROWS_OF_A_LONG_FILE; row++) {
            text.append("7,")
                    .append(at.plusMinutes(90L * row).toString().replace('T', ' '))
                    .append(",am,12.5\n");
        }
        choose("long.csv", text.toString());
        browser.press("See how the rows would fare");
        assertThat(browser.driver().findElements(By.tagName("progress"))).hasSize(1);
        browser.waitForWords("Nothing is stored yet.");
        assertThat(browser.words()).contains("New " + ROWS_OF_A_LONG_FILE);
        assertThat(browser.complaints()).isEmpty();
        // a page that came without its script stays as it is until it is opened again, so that it can be looked at
        browser.withhold("*/pages/pailbook.js");
        browser.press("Take");
        assertThat(browser.driver().findElements(By.tagName("progress"))).hasSize(1);
        assertThat(browser.axe()).isEmpty();
        browser.withhold();
        browser.follow(() ->
                browser.driver().findElement(By.linkText("Show how far it is")).click());
        browser.waitForWords("What was not refused is stored.");
        assertThat(browser.words()).contains("New " + ROWS_OF_A_LONG_FILE);
    }
}
