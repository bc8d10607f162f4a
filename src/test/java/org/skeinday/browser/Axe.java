package org.skeinday.browser;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * The rules of accessibility, asked in the page itself and in one short call. {@code AxeBuilder} opens a second window
 * and carries its half megabyte of rules, and all that passed, through the driver for each page: most of the time that
 * browser tests took.
 */
final class Axe {
    private static final String SOURCE = source();

    private static final String ASK = """
            const done = arguments[arguments.length - 1];
            if (!window.axe) {
              window.makeAxe();
            }
            window.axe.run(document, {
              runOnly: {type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']},
              resultTypes: ['violations']
            }).then(
              found => done(found.violations.map(rule =>
                rule.id + ': ' + rule.nodes.map(node => node.html + ' ' + node.failureSummary).join(' | ')).join('; ')),
              error => done('axe could not be asked: ' + error));
            """;

    private Axe() {}

    /** Puts the rules into each page that this window opens from now on; nothing of them runs before they are asked. */
    static void into(ChromeDriver browser) {
        browser.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", SOURCE));
    }

    /** @return what is broken on the page that stands there, with the elements; empty where nothing is */
    static String broken(ChromeDriver browser) {
        if (Boolean.FALSE.equals(browser.executeScript("return 'makeAxe' in window"))) { // a tab opened by a test
            browser.executeScript(SOURCE);
        }
        return String.valueOf(browser.executeAsyncScript(ASK));
    }

    private static String source() {
        try (InputStream in = Objects.requireNonNull(AxeBuilder.class.getResourceAsStream("/axe.min.js"))) {
            return "window.makeAxe = () => {" + new String(in.readAllBytes(), StandardCharsets.UTF_8) + "\n};";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
