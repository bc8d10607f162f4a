package org.skeinday;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Ctrl-C and the system's signal to stop. Whatever was acknowledged is on the disk before, so the rest is given a bounded
 * time: the program ends with 0 though something hangs, and with 6 when closing failed.
 */
final class Stopping {
    private static final int DISK = 6;

    private Stopping() {}

    /** Something to close. */
    interface Close {
        void run() throws Exception;
    }

    /** Closes when the program is told to end, and ends it: without this a signal's own number would be its code. */
    static void when(Close close, Duration most, PrintWriter out, PrintWriter err) {
        Close andSaid = () -> {
            close.run();
            say(out, "Stopped. Everything is saved.");
        };
        Runtime.getRuntime()
                .addShutdownHook(new Thread(() -> Runtime.getRuntime().halt(code(andSaid, most, err)), "stopping"));
    }

    /** @return the exit code, after at most so long */
    static int code(Close close, Duration most, PrintWriter err) {
        var closed = new CompletableFuture<Void>();
        Thread closing = new Thread(
                () -> {
                    try {
                        close.run();
                        closed.complete(null);
                    } catch (Exception | Error e) {
                        closed.completeExceptionally(e);
                    }
                },
                "closing");
        closing.setDaemon(true);
        closing.start();
        try {
            closed.get(most.toMillis(), TimeUnit.MILLISECONDS);
            return 0;
        } catch (TimeoutException | InterruptedException e) {
            say(err, "Closing took longer than " + most.toSeconds() + " s and was left. All that was saved is there.");
            return 0;
        } catch (ExecutionException e) {
            say(err, "Closing failed: " + e.getCause() + ". All that was saved is there.");
            return DISK;
        }
    }

    private static void say(PrintWriter err, String words) {
        err.println(words);
        err.flush();
    }
}
