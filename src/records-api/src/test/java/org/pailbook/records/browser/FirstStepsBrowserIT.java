package org.pailbook.records.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.pailbook.records.problem.PackagedService;

/** Whoever opens a fresh service with nothing but the printed key gets to the first cow's projection in three steps, without a script. */
@Tag("contract")
class FirstStepsBrowserIT {
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    @Test
    void theRootLeadsFromTheKeyToTheFirstCowsProjection(@TempDir Path data) throws IOException {
        try (PackagedService service = ShownService.empty(data);
                Browser browser = Browser.startOrSkip(service.address())) {
            browser.screen(360, 740, 1);
            browser.scripts(false);
            browser.open("/");
            assertThat(browser.driver().getCurrentUrl()).endsWith("/pages/sign-in");
            browser.follow(() -> browser.driver().findElement(By.id("key")).sendKeys(PackagedService.KEY, Keys.ENTER));
            assertThat(browser.words()).contains("Step 1 of 3");
            type(browser, Map.of("name", "A\u00e7ude Alto <b>"));
            browser.driver()
                    .findElement(By.cssSelector("#timeZone option[value='Europe/Lisbon']"))
                    .click();
            submit(browser);
            assertThat(browser.words()).contains("Step 2 of 3");
            assertThat(browser.driver().getCurrentUrl()).endsWith("/pages/herds/acude-alto-b/new-cow");
            // a wrong entry first: what was typed stays, and it is said what was wrong
            type(browser, Map.of("tag", "007", "cowName", "Estrela", "breed", "HOL", "parity", "two"));
            date(browser, "calvedOn", TODAY.minusDays(60));
            submit(browser);
            assertThat(browser.driver().findElement(By.id("parity")).getDomAttribute("value"))
                    .isEqualTo("two");
            assertThat(browser.driver().findElement(By.id("parity-about")).getText())
                    .isNotEmpty();
            type(browser, Map.of("parity", "2", "milkKg", "31,4"));
            date(browser, "testedOn", TODAY.minusDays(10));
            submit(browser);
            assertThat(browser.driver().findElement(By.tagName("h1")).getText()).isEqualTo("007 Estrela");
            assertThat(browser.words()).contains("Milk in 305 days", "31.4", ", 80 %)");
            assertThat(browser.driver().findElements(By.cssSelector("figure svg")))
                    .isNotEmpty();
            assertThat(browser.widerThanTheScreen()).isZero();
            assertThat(browser.complaints())
                    .filteredOn(said -> !said.contains("422"))
                    .isEmpty();
        }
    }

    private static void type(Browser browser, Map<String, String> values) {
        values.forEach((field, value) -> {
            WebElement input = browser.driver().findElement(By.id(field));
            input.clear();
            input.sendKeys(value);
        });
    }

    /** How a date is typed depends on the browser's language, so it is put in as a browser keeps it. */
    private static void date(Browser browser, String field, LocalDate date) {
        browser.driver()
                .executeScript("document.getElementById(arguments[0]).value = arguments[1]", field, date.toString());
    }

    private static void submit(Browser browser) {
        browser.follow(() -> browser.driver()
                .findElement(By.cssSelector("form.fields button"))
                .click());
    }
}
