package org.skeinday.device.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;

/** What is done at the laptop itself, for who started the program by a double click: a new PIN, and stopping. */
public final class LaptopPages {
    private final Page page;
    private final NewPin newPin;
    private final Runnable stop;

    /** Makes another PIN in place of the old one. */
    public interface NewPin {
        String make() throws IOException;
    }

    /** @param stop ends the program a moment later, so that its answer still goes out */
    public LaptopPages(Page page, NewPin newPin, Runnable stop) {
        this.page = page;
        this.newPin = newPin;
        this.stop = stop;
    }

    public void register(Routes routes) {
        routes.post("/laptop/pin", Role.COACH, this::pin);
        routes.post("/laptop/stop", Role.COACH, this::stop);
    }

    private void pin(Context ctx) {
        refuseElsewhere(ctx);
        try {
            page.fragment(
                    ctx,
                    "device/_told.jte",
                    new ToldView("The coach's PIN is now " + newPin.make()
                            + ". Note it: it is not shown again. The old one opens nothing any more."));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void stop(Context ctx) {
        refuseElsewhere(ctx);
        page.fragment(
                ctx,
                "device/_told.jte",
                new ToldView("Skeinday is stopped. All that was saved is there; tablets keep what they still hold, and"
                        + " send it when it runs again. This page can be closed."));
        stop.run();
    }

    private static void refuseElsewhere(Context ctx) {
        if (!Access.onThisMachine(ctx)) {
            throw new Refusal(403, "This is done at the laptop itself.");
        }
    }
}
