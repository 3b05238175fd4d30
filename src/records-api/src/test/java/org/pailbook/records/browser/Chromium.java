package org.pailbook.records.browser;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** Finds Debian's Chromium and its driver on the machine and starts them, without a window. */
final class Chromium {
    private static final List<String> BINARIES = List.of("/usr/bin/chromium", "/usr/bin/chromium-browser");
    private static final List<String> DRIVERS = List.of("/usr/bin/chromedriver", "/usr/lib/chromium/chromedriver");
    private static final String LACKING =
            "chromium or chromedriver is not on this machine (apt-get install chromium chromium-driver), so the pages were not tried in a browser";

    private Chromium() {}

    /** Skips the test with a sentence where there is no browser. */
    static ChromeDriver startOrSkip(String... arguments) {
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
        return started;
    }

    private static Optional<Path> first(List<String> paths) {
        return paths.stream().map(Path::of).filter(Files::isExecutable).findFirst();
    }
}
