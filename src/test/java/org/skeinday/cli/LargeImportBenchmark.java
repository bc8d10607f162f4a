package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How long 20,000 motors and 20,000 flights take in one act ({@code -Dskeinday.rows}); promised: 20 s on 2 cores. */
class LargeImportBenchmark {
    private static final int ROWS = Integer.getInteger("skeinday.rows", 20_000);

    @TempDir
    Path root;

    @Test
    void twenty_thousand_motors_and_flights_in_one_act() throws Exception {
        var system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        List<String> heard = new ArrayList<>();
        double load = system.getSystemLoadAverage();
        long cpu = system.getProcessCpuTime();
        long began = System.nanoTime();
        Exchange.Taken taken = Exchange.take(
                root.resolve("data"), LargeFiles.of(ROWS), 0, Clock.systemUTC(), new SecureRandom(), heard::add);
        double seconds = (System.nanoTime() - began) / 1e9;
        double cpuSeconds = (system.getProcessCpuTime() - cpu) / 1e9;
        assertEquals(List.of(), taken.errors());
        assertEquals(1, taken.n(), "one act");
        System.out.printf(
                Locale.ROOT,
                "Import of %,d motors and %,d flights: %.1f s, %,.0f rows/s, %.1f s of CPU; load of the machine %.1f of %d;"
                        + " heard: %s%n",
                ROWS,
                ROWS,
                seconds,
                2 * ROWS / seconds,
                cpuSeconds,
                load,
                system.getAvailableProcessors(),
                heard.stream().distinct().toList());
    }
}
