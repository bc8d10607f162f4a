package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.TestExecutionResult.Status;
import org.junit.platform.engine.discovery.ClassNameFilter;
import org.junit.platform.engine.discovery.DiscoverySelectors;
import org.junit.platform.launcher.Launcher;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

/**
 * Runs the browser tests over and over and names each that was red even once: how often, and why the last time.
 *
 * <p>{@code -Dskeinday.loops=20} times; {@code -Dskeinday.loops.of=Outbox} only those with this in their class's name.
 */
class SteadyBenchmark {
    private static final int LOOPS = Integer.getInteger("skeinday.loops", 20);
    private static final String OF = System.getProperty("skeinday.loops.of", "");

    private final AtomicLong green = new AtomicLong();
    private final Map<String, Integer> red = new ConcurrentSkipListMap<>();
    private final Map<String, String> why = new TreeMap<>();

    @Test
    void each_browser_test_is_green_each_time() {
        Launcher launcher = LauncherFactory.create();
        LauncherDiscoveryRequest all = LauncherDiscoveryRequestBuilder.request()
                .selectors(DiscoverySelectors.selectPackage("org.skeinday.browser"))
                .filters(ClassNameFilter.includeClassNamePatterns(".*" + OF + ".*BrowserIT"))
                .build();
        for (int loop = 1; loop <= LOOPS; loop++) {
            launcher.execute(all, new Looking());
            System.out.printf("loop %d of %d: %d green so far, not steady: %s%n", loop, LOOPS, green.get(), red);
        }
        assertTrue(green.get() > 0 || !red.isEmpty(), "no test is called like '" + OF + "'");
        assertEquals(Map.of(), why, "red, of " + LOOPS + " times: " + red);
    }

    private final class Looking implements TestExecutionListener {
        @Override
        public void executionFinished(TestIdentifier test, TestExecutionResult result) {
            if (result.getStatus() == Status.FAILED) {
                String name = test.getUniqueId()
                        .replaceAll(".*\\[class:org\\.skeinday\\.browser\\.|\\].*\\[", " ")
                        .strip();
                red.merge(name, 1, Integer::sum);
                why.put(name, result.getThrowable().map(Throwable::toString).orElse("without a word"));
            } else if (test.isTest()) {
                green.incrementAndGet();
            }
        }
    }
}
