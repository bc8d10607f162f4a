package org.skeinday.device.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.function.Consumer;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The coach makes other codes: for everybody, or for today's timekeepers and captains. */
final class CodePages {
    private static final Logger LOG = LoggerFactory.getLogger(CodePages.class);

    private final JoinCodes codes;
    private final Consumer<Context> shown;

    interface Deed {
        void done(String act) throws IOException;
    }

    /** @param shown answers with the page's part, once it is done */
    CodePages(JoinCodes codes, Consumer<Context> shown) {
        this.codes = codes;
        this.shown = shown;
    }

    void register(Routes routes) {
        routes.post("/codes/new", Role.COACH, ctx -> answer(ctx, codes::renew));
        routes.post("/codes/today", Role.COACH, ctx -> answer(ctx, codes::handOut));
    }

    private void answer(Context context, Deed deed) {
        done(context, deed);
        shown.accept(context);
    }

    /** Under the number of the form: sent again it is done once. */
    static void done(Context context, Deed deed) {
        try {
            deed.done(FormActs.number(context));
        } catch (IOException e) {
            LOG.warn("Other codes could not be kept", e);
            throw new Refusal(507, "The laptop's disk took no new codes. Make space on it, then do this again.");
        }
    }
}
