package org.pailbook.records.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.NoSuchSessionException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;

/** Chromium without a window, and what a test wants to know of a page in it. */
final class Browser implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private final ChromeDriver driver;
    private final String address;

    private Browser(ChromeDriver driver, String address) {
        this.driver = driver;
        this.address = address;
    }

    /**
     * Starts it; without a browser on the machine the test is skipped with a sentence.
     *
     * @param address of the service, without a slash at the end
     * @param arguments of Chromium besides the usual ones, as {@code --lang=de}
     */
    static Browser startOrSkip(String address, String... arguments) {
        return new Browser(Chromium.startOrSkip(arguments), address);
    }

    ChromeDriver driver() {
        return driver;
    }

    /** Opens a page of the service; what was logged of pages before is forgotten. */
    void open(String path) {
        driver.manage().logs().get(LogType.BROWSER);
        driver.manage().logs().get(LogType.PERFORMANCE);
        driver.get(address + path);
    }

    /** Signs in with a key as a person does. */
    void signIn(String key) {
        open("/pages/sign-in");
        follow(() -> driver.findElement(By.id("key")).sendKeys(key, Keys.ENTER));
    }

    /**
     * Does what leads to another page, and waits until the page that was there is gone and the next one is whole. Each click or key that sends a form or
     * follows a link belongs in here: the driver returns as soon as the key is pressed, when nobody can say which of the two pages is looked at.
     */
    void follow(Runnable step) {
        driver.executeScript("window.pageBefore = true");
        step.run();
        waitUntil(
                () -> (Boolean) driver.executeScript("return !window.pageBefore && document.readyState === 'complete'"),
                () -> "no other page came after " + driver.getCurrentUrl());
    }

    /** Presses the button whose text begins so, which leads to another page. */
    void press(String button) {
        follow(() -> driver.findElement(By.xpath("//button[starts-with(normalize-space(.), '" + button + "')]"))
                .click());
    }

    /** Waits for words that come by themselves, as at the end of work the page looks on at. */
    void waitForWords(String words) {
        waitUntil(() -> words().contains(words), () -> "waited for \"" + words + "\", the page says: " + words());
    }

    /** Screen of that many CSS pixels; 1280 pixels at 400 % zoom are 320 of them. */
    void screen(int width, int height, double pixelsEach) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", pixelsEach, "mobile", false));
    }

    /** As on {@code print}, or empty text for the screen. */
    void media(String media) {
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", media));
    }

    /** Whether scripts of pages run; the tests' own always do. */
    void scripts(boolean run) {
        driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", !run));
    }

    /** Pages do not get what has such an address; none: they get all again. */
    void withhold(String... addresses) {
        driver.executeCdpCommand("Network.enable", Map.of());
        driver.executeCdpCommand("Network.setBlockedURLs", Map.of("urls", List.of(addresses)));
    }

    /** What the page wrote to the console as error or warning, and what the browser complained of, since it was opened. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Addresses asked for since the page was opened that are not the service's own. */
    List<String> requestsToElsewhere() {
        return requests()
                .filter(url -> !url.startsWith(address) && !url.startsWith("data:"))
                .toList();
    }

    private Stream<String> requests() {
        String mark = "\"method\":\"Network.requestWillBeSent\"";
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .map(LogEntry::getMessage)
                .filter(message -> message.contains(mark))
                .map(message -> message.replaceAll("(?s).*\"request\":\\{.*?\"url\":\"([^\"]*)\".*", "$1"));
    }

    /** How many CSS pixels the page is wider than the screen; 0 if nobody must scroll sideways. */
    long widerThanTheScreen() {
        return (Long) driver.executeScript(
                "return Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth)");
    }

    /** All words that can be read, in their order; a blank that does not break is a blank like any other here. */
    String words() {
        return driver.findElement(By.tagName("body"))
                .getText()
                .replaceAll("\\s+", " ")
                .strip();
    }

    /** Serious and critical findings of axe, each with the place. */
    @SuppressWarnings("unchecked")
    List<String> axe() throws IOException {
        driver.executeScript(resource("axe.min.js"));
        return (List<String>) driver.executeAsyncScript(resource("org/pailbook/records/browser/run-axe.js"));
    }

    /** Presses Tab until every place of the page was reached; what was not reached, or not seen to be reached. */
    @SuppressWarnings("unchecked")
    List<String> keyboardWalk() throws IOException {
        String walk = resource("org/pailbook/records/browser/keyboard-walk.js");
        long places = (Long) driver.executeScript(walk, "begin");
        // a date has several places to stop at
        for (long pressed = 0; pressed <= places + 25; pressed += 50) {
            Actions some = new Actions(driver);
            for (int key = 0; key < 50; key++) {
                some.sendKeys(Keys.TAB);
            }
            some.perform();
        }
        return new ArrayList<>((List<String>) driver.executeScript(walk, "end"));
    }

    /** Waits until something is so, half a minute at most; what there is instead is told. A page that changes while it is looked at is looked at again. */
    void waitUntil(BooleanSupplier isSo, Supplier<String> instead) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        WebDriverException changing = null;
        while (System.nanoTime() < end) {
            try {
                if (isSo.getAsBoolean()) {
                    return;
                }
                changing = null;
            } catch (NoSuchSessionException ended) {
                throw ended;
            } catch (WebDriverException now) {
                // the page goes while it is asked: no such element, a stale one, a script that was cut off
                changing = now;
            }
            LockSupport.parkNanos(50_000_000);
        }
        if (changing != null) {
            throw new AssertionError("the page does not come to rest", changing);
        }
        throw new AssertionError(instead.get());
    }

    /** The page as a PDF file, on the paper its style asks for. */
    byte[] printed() {
        Map<String, Object> printed = driver.executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true));
        return Base64.getDecoder().decode((String) printed.get("data"));
    }

    /** What is to be seen now, as a PNG file, for whoever wants to know why a test failed. */
    void picture(Path file) throws IOException {
        Files.createDirectories(file.getParent());
        Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
    }

    private static String resource(String name) throws IOException {
        try (var in = Browser.class.getClassLoader().getResourceAsStream(name)) {
            return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
