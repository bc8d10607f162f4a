package org.skeinday.cli;

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

    private final CompletableFuture<Close> toClose = new CompletableFuture<>();
    private final Thread hook;
    private volatile boolean asked;

    private Stopping(Duration most, PrintWriter out, PrintWriter err) {
        hook = new Thread(() -> stop(most, out, err), "stopping");
    }

    /** Something to close. */
    interface Close {
        void run() throws Exception;
    }

    /**
     * From now on the program ends with 0 when it is told to: without this a signal's own number would be its code. Told
     * while it is still starting, it lets the start come to its end and closes what was begun.
     *
     * @param most for both together
     */
    static Stopping fromNowOn(Duration most, PrintWriter out, PrintWriter err) {
        var stopping = new Stopping(most, out, err);
        Runtime.getRuntime().addShutdownHook(stopping.hook);
        return stopping;
    }

    private void stop(Duration most, PrintWriter out, PrintWriter err) {
        asked = true;
        Close andSaid = () -> {
            toClose.get().run();
            say(out, "Stopped. Everything is saved.");
        };
        Runtime.getRuntime().halt(code(andSaid, most, err));
    }

    boolean isAsked() {
        return asked;
    }

    /** It has started: this is how it is closed. */
    void closing(Close close) {
        toClose.complete(close);
    }

    /** It did not start, or is done: from here on it ends with its own code, unless it has been told to stop. */
    void over() {
        toClose.complete(() -> {});
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // it was told to stop, and is about to
        }
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
