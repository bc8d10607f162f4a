package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.Optional;
import org.skeinday.attempt.action.MakeFinal;
import org.skeinday.device.web.PinGate;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;

/** The chief makes the result final; and the result as a document to print. */
public final class FinalPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final PinGate pins;
    private final ResultPages results;

    public FinalPages(ActStore record, FormActs forms, Page page, Clock clock, PinGate pins, ResultPages results) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.pins = pins;
        this.results = results;
    }

    public void register(Routes routes) {
        routes.post("/results/final", Role.CAPTAIN, this::make);
        routes.get(
                "/results/print",
                Role.VIEWER,
                ctx -> page.show(ctx, "Result to print", "attempt/document.jte", record.read(this::document)));
    }

    /** What is made final is what the page has shown. */
    private void make(Context ctx) {
        String problem = GivenPin.problem(ctx, pins);
        if (!problem.isEmpty()) {
            ctx.status(422);
            results.part(ctx, problem);
            return;
        }
        String after = NowPages.field(ctx, "after");
        Optional<Made> made = record.read(tx -> Today.read(tx)
                .map(today -> new Made(today.event().id(), ResultStanding.of(tx, today, clock.getZone()))));
        if (made.isEmpty() || !made.get().standing().seen().equals(NowPages.field(ctx, "seen"))) {
            ctx.status(409);
            results.part(ctx, "The result was changed meanwhile. Look again, then make it final.");
            return;
        }
        var content = new MakeFinal.Final(
                made.get().event(),
                after.matches("\\d{1,6}") ? Integer.parseInt(after) : -1,
                made.get().standing().lines(),
                GivenPin.isThere(ctx));
        results.part(ctx, FormActs.words(ctx, forms.submit(ctx, "result.make-final", content)));
    }

    private record Made(String event, ResultStanding standing) {}

    private DocumentView document(Tx tx) {
        return Today.read(tx, clock.millis())
                .map(today -> new DocumentPresenter(tx, today, clock, record.people()::name).view())
                .orElse(DocumentView.NONE);
    }
}
