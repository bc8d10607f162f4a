package org.skeinday.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.skeinday.dayplan.Goal;
import org.skeinday.dayplan.SearchClock;

/** Says each second, from the first one on, how far a search has come; a quick one says nothing. Ends with it. */
final class ProgressLines implements AutoCloseable {
    private final ScheduledExecutorService each = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "progress");
        thread.setDaemon(true);
        return thread;
    });

    ProgressLines(SearchClock clock, Goal goal, PrintWriter err) {
        var unused = each.scheduleAtFixedRate(() -> say(clock, goal, err), 1, 1, TimeUnit.SECONDS);
    }

    private static void say(SearchClock clock, Goal goal, PrintWriter err) {
        err.println(String.format(Locale.ROOT, "%.0f s: %s", clock.elapsed(), clock.words(goal)));
        err.flush();
    }

    @Override
    public void close() {
        each.shutdownNow();
    }
}
