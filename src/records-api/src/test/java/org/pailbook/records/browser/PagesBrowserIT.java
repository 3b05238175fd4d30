package org.pailbook.records.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.pailbook.records.problem.PackagedService;

/** Every page in a browser: sound, whole on a narrow screen, and to be used with the keyboard alone. */
@Tag("contract")
class PagesBrowserIT {
    private static final int HIGH = 900;
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

    static List<String> pages() {
        return PageAddresses.all();
    }

    @ParameterizedTest
    @MethodSource("pages")
    void aPageLoadsWithoutComplaintAndAsksNobodyElse(String page) {
        browser.screen(1280, HIGH, 1);
        browser.open(page);
        // the browser itself tells of a page that answers "not found"
        assertThat(browser.complaints())
                .filteredOn(said -> !said.contains("404"))
                .isEmpty();
        assertThat(browser.requestsToElsewhere()).isEmpty();
        assertThat(browser.driver().getTitle()).endsWith(" - Pailbook").hasSizeGreaterThan(" - Pailbook".length());
        assertThat(browser.driver().findElements(By.tagName("h1"))).hasSize(1);
        assertThat(browser.driver().findElement(By.tagName("html")).getDomAttribute("lang"))
                .isNotEmpty();
    }

    /** WCAG 2.2, 1.4.10: 320 CSS pixels are 1280 at 400 % zoom; 360 is a small telephone (common practice, no source). */
    @ParameterizedTest
    @MethodSource("pages")
    void aNarrowScreenShowsAllWithoutScrollingSideways(String page) {
        browser.screen(1280, HIGH, 1);
        browser.open(page);
        String wide = browser.words();
        for (int width : new int[] {360, 320}) {
            browser.screen(width, 640, 1280.0 / width);
            assertThat(browser.widerThanTheScreen()).as(page + " at " + width).isZero();
            assertThat(browser.words()).as(page + " at " + width).isEqualTo(wide);
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void axeFindsNothingSerious(String page) throws IOException {
        for (int width : new int[] {1280, 360}) {
            browser.screen(width, HIGH, 1);
            browser.open(page);
            assertThat(browser.axe()).as(page + " at " + width).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void theTabKeyReachesEverythingAndShowsWhereItIs(String page) throws IOException {
        browser.screen(1280, HIGH, 1);
        browser.open(page);
        assertThat(browser.keyboardWalk()).isEmpty();
    }

    /** A4 less margins of 14 mm is 182 mm, 688 CSS pixels at 96 to the inch. */
    @ParameterizedTest
    @MethodSource("pages")
    void onPaperThereIsNoNavigationAndNothingIsCutOff(String page) {
        browser.open(page);
        browser.screen(688, 1000, 1);
        browser.media("print");
        try {
            String unwanted = PageAddresses.isForm(page) ? "nav, .skip" : "nav, form, .skip";
            assertThat(browser.driver().findElements(By.cssSelector(unwanted))).noneMatch(WebElement::isDisplayed);
            assertThat(browser.widerThanTheScreen()).isZero();
        } finally {
            browser.media("");
        }
    }
}
