package org.pailbook.records.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.interactions.Actions;
import org.pailbook.records.problem.PackagedService;

/** A weigh day typed in a browser: with the keyboard alone, without a connection, over a closed browser, beside somebody else. */
@Tag("contract")
class WeighDayBrowserIT {
    private static final String DAY = "2025-11-12";

    private static Path data;
    private static PackagedService service;
    private Browser browser;

    @BeforeAll
    static void start() throws IOException {
        data = Files.createTempDirectory(Files.createDirectories(Path.of("target", "browser")), "weigh-day");
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

    private void open(WrittenHerd herd, String... arguments) {
        browser = Browser.startOrSkip(service.address(), arguments);
        browser.signIn(PackagedService.KEY);
        openSheet(herd);
    }

    private void openSheet(WrittenHerd herd) {
        browser.open(herd.page("/weigh-day?asOf=" + DAY));
    }

    private void press(CharSequence... keys) {
        Actions typing = new Actions(browser.driver());
        for (CharSequence some : keys) {
            typing.sendKeys(some);
        }
        typing.perform();
    }

    private WebElement field(String tag, String cell) {
        return browser.driver().findElement(By.cssSelector("[data-tag='" + tag + "'] [data-cell='" + cell + "']"));
    }

    private WebElement row(String tag) {
        return browser.driver().findElement(By.cssSelector("[data-tag='" + tag + "']"));
    }

    private String told(String tag) {
        return row(tag).findElement(By.className("row-told")).getText();
    }

    private String state() {
        return browser.driver().findElement(By.id("sheet-state")).getText();
    }

    private void save() {
        browser.follow(() -> browser.driver().findElement(By.id("save")).click());
    }

    private void waitForState(String begin) {
        browser.waitUntil(() -> state().startsWith(begin), () -> "waited for " + begin + ", it says " + state());
    }

    private void connection(boolean isThere) {
        browser.driver().executeCdpCommand("Network.enable", Map.of());
        browser.driver()
                .executeCdpCommand(
                        "Network.emulateNetworkConditions",
                        Map.of("offline", !isThere, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
    }

    private static List<String> milkings(WrittenHerd herd) throws IOException {
        return herd.records("milkings", DAY).stream()
                .map(one -> one.at("/record/animal/id").asText() + " "
                        + one.at("/record/milkingOfDay").asText() + " "
                        + one.at("/record/milkKg").asDouble())
                .sorted()
                .toList();
    }

    @Test
    void aWeighDayIsTypedWithTheKeyboardAloneAndEachRowIsSavedWhenItIsLeft() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "keyboard").withCows("2", "9", "10");
        open(herd);
        // from the top of the page to the first field
        for (int tabs = 0;
                tabs < 60 && browser.driver().switchTo().activeElement().getDomAttribute("data-cell") == null;
                tabs++) {
            press(Keys.TAB);
        }
        assertThat(browser.driver().switchTo().activeElement()).isEqualTo(field("2", "am"));
        press("14,2", Keys.ENTER, "13.5", Keys.ENTER);
        assertThat(browser.driver().switchTo().activeElement()).isEqualTo(field("9", "am"));
        waitForState("All rows are saved.");
        assertThat(milkings(herd)).containsExactly("2 am 14.2", "2 pm 13.5");
        press("15", Keys.TAB, "14.1", Keys.TAB, "16,0", Keys.ENTER, "15", Keys.ENTER);
        assertThat(browser.driver().switchTo().activeElement().getDomAttribute("id"))
                .isEqualTo("save");
        waitForState("All rows are saved.");
        assertThat(milkings(herd))
                .containsExactly("10 am 16.0", "10 pm 15.0", "2 am 14.2", "2 pm 13.5", "9 am 15.0", "9 pm 14.1");
        assertThat(state()).contains("3 of 3 cows here weighed, 87.8 kg");
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requestsToElsewhere()).isEmpty();
        press(Keys.ENTER);
        openSheet(herd);
        assertThat(field("9", "pm").getDomProperty("value")).isEqualTo("14.1");
    }

    @Test
    void whatIsOddOrWrongIsSaidBeforeItIsSavedAndOnlyWhatIsWrongIsHeldBack() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "odd").withCows("2", "9");
        open(herd);
        field("2", "am").sendKeys("40");
        field("2", "pm").sendKeys("38");
        assertThat(told("2")).contains("78 kg together", "Expected ", "Look twice");
        assertThat(milkings(herd)).isEmpty();
        field("9", "am").sendKeys("1x4");
        assertThat(told("9")).contains("AM, kg: Not a number");
        assertThat(field("9", "am").getDomAttribute("aria-invalid")).isEqualTo("true");
        waitForState("Not yet saved: 9.");
        assertThat(milkings(herd)).containsExactly("2 am 40.0", "2 pm 38.0");
        field("9", "am").clear();
        field("9", "am").sendKeys("14", Keys.TAB, Keys.TAB);
        waitForState("All rows are saved.");
        assertThat(milkings(herd)).containsExactly("2 am 40.0", "2 pm 38.0", "9 am 14.0");
    }

    @Test
    void whatWasTypedWithoutAConnectionOutlivesTheBrowserAndIsSentWhenItIsBack() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "cut").withCows("2", "9", "10");
        String profile = "--user-data-dir="
                + Files.createTempDirectory("pailbook-profile").toAbsolutePath();
        open(herd, profile);
        field("2", "am").sendKeys("14.2", Keys.ENTER, "13.1", Keys.ENTER);
        waitForState("All rows are saved.");
        connection(false);
        field("9", "am").sendKeys("11,5", Keys.ENTER, "10,9", Keys.ENTER);
        waitForState("No connection. Not yet saved: 9.");
        // still being typed when the browser goes
        field("10", "am").sendKeys("15.7");
        assertThat(row("9").getDomAttribute("class")).contains("waiting");
        assertThat(milkings(herd)).containsExactly("2 am 14.2", "2 pm 13.1");
        browser.close();
        open(herd, profile);
        waitForState("All rows are saved.");
        assertThat(field("10", "am").getDomProperty("value")).isEqualTo("15.7");
        assertThat(milkings(herd)).containsExactly("10 am 15.7", "2 am 14.2", "2 pm 13.1", "9 am 11.5", "9 pm 10.9");
        assertThat(herd.records("milkings", DAY))
                .allMatch(one -> one.path("version").asInt() == 1);
    }

    @Test
    void aServiceThatIsGoneForAWhileCostsNothing() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "gone").withCows("2", "9");
        open(herd);
        int port = service.port();
        service.close();
        field("2", "am").sendKeys("14.2", Keys.ENTER, "13.1", Keys.ENTER);
        waitForState("No connection. Not yet saved: 2.");
        service = ShownService.again(data, port);
        waitForState("All rows are saved.");
        assertThat(milkings(herd)).containsExactly("2 am 14.2", "2 pm 13.1");
    }

    @Test
    void whoIsNoLongerSignedInIsToldSoAndLosesNothing() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "signed-out").withCows("2", "9");
        open(herd);
        browser.driver().manage().deleteAllCookies();
        field("2", "am").sendKeys("14.2", Keys.ENTER, "13.1", Keys.ENTER);
        waitForState("You are no longer signed in, or may not save here. Not yet saved: 2.");
        String sheet = browser.driver().getWindowHandle();
        browser.driver().switchTo().newWindow(WindowType.TAB);
        browser.signIn(PackagedService.KEY);
        browser.driver().close();
        browser.driver().switchTo().window(sheet);
        waitForState("All rows are saved.");
        assertThat(milkings(herd)).containsExactly("2 am 14.2", "2 pm 13.1");
    }

    @Test
    void whatSomebodyElseWroteIsShownBesideOnesOwnAndAPersonDecides() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "both").withCows("2", "9");
        open(herd);
        for (String tag : List.of("2", "9")) {
            herd.post(
                    "milkings",
                    "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"" + tag
                            + "\"},\"startedAt\":\"2025-11-12T05:41:00Z\",\"milkingOfDay\":\"am\",\"milkKg\":13.1}");
        }
        field("2", "am").sendKeys("14.2", Keys.ENTER, Keys.ENTER, "15", Keys.ENTER, Keys.ENTER);
        waitForButton("2", "Write 14.2");
        waitForButton("9", "Keep 13.1");
        assertThat(told("2")).contains("somebody else wrote here, and it now says 13.1");
        assertThat(milkings(herd)).containsExactly("2 am 13.1", "9 am 13.1");
        button("2", "Write 14.2").click();
        button("9", "Keep 13.1").click();
        waitForState("All rows are saved.");
        assertThat(field("9", "am").getDomProperty("value")).isEqualTo("13.1");
        assertThat(milkings(herd)).containsExactly("2 am 14.2", "9 am 13.1");
        JsonNode kept = herd.records("milkings", DAY).get(0);
        assertThat(kept.at("/record/startedAt").asText()).isEqualTo("2025-11-12T05:41:00Z");
    }

    private WebElement button(String tag, String text) {
        return row(tag).findElement(By.xpath(".//button[text()='" + text + "']"));
    }

    private void waitForButton(String tag, String text) {
        browser.waitUntil(
                () -> !row(tag).findElements(By.xpath(".//button[text()='" + text + "']"))
                        .isEmpty(),
                () -> tag + " says " + told(tag));
    }

    @Test
    void aTelephoneShowsTheSheetWithoutScrollingSidewaysAndAxeFindsNothingSerious() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "narrow")
                .withCows("0123456789-0123456789-01234567", "9", "\u05e4\u05e8\u05d4");
        open(herd);
        browser.screen(360, 740, 2);
        field("9", "am").sendKeys("40", Keys.ENTER, "40x", Keys.ENTER);
        assertThat(browser.widerThanTheScreen()).isZero();
        assertThat(browser.axe()).isEmpty();
        // 24 CSS pixels are asked for (WCAG 2.2, 2.5.8); in the barn it is more, ours
        assertThat(field("9", "am").getSize().getHeight()).isGreaterThanOrEqualTo(44);
        assertThat(field("9", "am").getDomAttribute("inputmode")).isEqualTo("decimal");
    }

    @Test
    void withoutScriptsTheSameSheetIsAPlainForm() throws IOException {
        WrittenHerd herd = WrittenHerd.make(service, "plain").withCows("2", "9");
        browser = Browser.startOrSkip(service.address());
        browser.signIn(PackagedService.KEY);
        browser.scripts(false);
        openSheet(herd);
        field("2", "am").sendKeys("14,2");
        field("9", "am").sendKeys("1x");
        save();
        assertThat(told("9")).contains("is not a number");
        assertThat(field("9", "am").getDomProperty("value")).isEqualTo("1x");
        assertThat(field("2", "am").getDomProperty("value")).isEqualTo("14,2");
        field("9", "am").clear();
        save();
        assertThat(browser.words()).contains("Weigh day 2025-11-12");
        assertThat(milkings(herd)).containsExactly("2 am 14.2");
    }
}
