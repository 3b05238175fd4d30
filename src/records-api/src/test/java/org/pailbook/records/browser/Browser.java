package org.pailbook.records.browser;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** Chromium without a window, and what a test wants to know of a page in it. */
final class Browser implements AutoCloseable {
    private static final List<String> BINARIES = List.of("/usr/bin/chromium", "/usr/bin/chromium-browser");
    private static final List<String> DRIVERS = List.of("/usr/bin/chromedriver", "/usr/lib/chromium/chromedriver");
    private static final String LACKING =
            "chromium or chromedriver is not on this machine (apt-get install chromium chromium-driver), so the pages were not tried in a browser";

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
        Optional<Path> binary = first(BINARIES);
        Optional<Path> driver = first(DRIVERS);
        if (binary.isEmpty() || driver.isEmpty()) {
            if ("true".equals(System.getenv("CI"))) {
                // a skipped test is easily overlooked among many
                System.err.println("WARNING: " + LACKING);
            }
            Assumptions.abort(LACKING);
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(binary.get().toFile());
        // as root, as in containers, Chromium has no sandbox; the driver must not look for browsers to download
        options.addArguments("--headless=new", "--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu");
        options.addArguments("--window-size=1280,900", "--disable-background-networking", "--no-first-run");
        options.addArguments(arguments);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(new File(driver.get().toString()))
                .withEnvironment(Map.of("SE_OFFLINE", "true", "PATH", String.valueOf(System.getenv("PATH"))))
                .build();
        ChromeDriver started = new ChromeDriver(service, options);
        started.manage().timeouts().pageLoadTimeout(Duration.ofSeconds(60)).scriptTimeout(Duration.ofSeconds(60));
        return new Browser(started, address);
    }

    private static Optional<Path> first(List<String> paths) {
        return paths.stream().map(Path::of).filter(Files::isExecutable).findFirst();
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
        driver.findElement(By.id("key")).sendKeys(key, Keys.ENTER);
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

    /** All words that can be read, in their order. */
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

    /** Waits until something is so, half a minute at most; what there is instead is told. */
    void waitUntil(BooleanSupplier isSo, Supplier<String> instead) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (true) {
            try {
                if (isSo.getAsBoolean()) {
                    return;
                }
                if (System.nanoTime() > end) {
                    throw new AssertionError(instead.get());
                }
            } catch (StaleElementReferenceException changing) {
                // the page is being written anew: look again
            }
            LockSupport.parkNanos(50_000_000);
        }
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
