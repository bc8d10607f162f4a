package org.skeinday.browser;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.logging.Level;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** Headless browsers, shared by all browser tests of one run. */
public final class Browsers {
    /** The sizes that the pages are made for, in CSS px. */
    public enum Size {
        PHONE(390, 844),
        /** A phone held sideways. */
        SIDEWAYS(844, 390),
        TABLET(820, 1180),
        LAPTOP(1280, 820);

        private final Dimension dimension;

        Size(int width, int height) {
            this.dimension = new Dimension(width, height);
        }
    }

    private static final Map<Size, ChromeDriver> OPEN = new ConcurrentHashMap<>();

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(() -> OPEN.values().forEach(ChromeDriver::quit)));
    }

    private Browsers() {}

    /** The narrowest screen, where a page has it hardest; all of them when pictures are taken. */
    static Size[] few() {
        return System.getProperty("shots", "").isEmpty() ? new Size[] {Size.PHONE} : Size.values();
    }

    public static ChromeDriver of(Size size) {
        return OPEN.computeIfAbsent(size, Browsers::start);
    }

    /** Keeps a picture of the whole page, below the fold too, under {@code -Dshots=folder}; does nothing without it. */
    public static void shot(ChromeDriver driver, String name) {
        String folder = System.getProperty("shots", "");
        if (!folder.isEmpty()) {
            try {
                Files.createDirectories(Path.of(folder));
                Files.write(Path.of(folder, name + ".png"), whole(driver));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private static byte[] whole(ChromeDriver driver) {
        Object size =
                driver.executeCdpCommand("Page.getLayoutMetrics", Map.of()).get("cssContentSize");
        Map<String, Object> clip = new HashMap<>(Map.of("scale", 1));
        ((Map<?, ?>) Objects.requireNonNull(size)).forEach((name, value) -> clip.put(String.valueOf(name), value));
        Object data = driver.executeCdpCommand(
                        "Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true, "clip", clip))
                .get("data");
        return Base64.getDecoder().decode(String.valueOf(data));
    }

    /** What the content security policy has stopped in any of the browsers since this was asked last. */
    static List<String> forbidden() {
        return OPEN.values().stream()
                .flatMap(driver -> driver.manage().logs().get(LogType.BROWSER).getAll().stream())
                .map(LogEntry::getMessage)
                .filter(message -> message.contains("Content Security Policy"))
                .toList();
    }

    private static ChromeDriver start(Size size) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(System.getProperty("chromium", "/usr/bin/chromium"));
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-quic",
                "--no-first-run");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        Map<String, Object> metrics =
                Map.of("width", size.dimension.width, "height", size.dimension.height, "pixelRatio", 1.0);
        options.setExperimentalOption("mobileEmulation", Map.of("deviceMetrics", metrics));
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(new File(System.getProperty("chromedriver", "/usr/bin/chromedriver")))
                .build();
        ChromeDriver browser = new ChromeDriver(service, options);
        Axe.into(browser);
        return browser;
    }
}
