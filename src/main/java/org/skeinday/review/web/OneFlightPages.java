package org.skeinday.review.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.action.AfterFlight;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.FlightWorth;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.review.FlightRow;
import org.skeinday.review.store.FlightRowStore;

/** One flight with all its figures: whether it counts, turns left, numbers confirmed. */
final class OneFlightPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;

    OneFlightPages(ActStore record, FormActs forms, Page page, Clock clock) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
    }

    void register(Routes routes) {
        routes.advice(
                "/evening/flight/{id}",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Flight", "review/flight.jte", flight(ctx, FormErrors.none(), "", null)));
        routes.post("/evening/flight/{id}", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            judge(ctx);
        });
        routes.post("/evening/flight/{id}/so", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            confirm(ctx);
        });
    }

    /** @param said what the last word did; empty when none was just taken */
    private OneFlightView flight(Context ctx, FormErrors form, String problem, @Nullable String said) {
        String id = ctx.pathParam("id");
        FlightRow row = record
                .read(tx ->
                        FlightRowStore.all(tx, clock.getZone(), record.people().names()))
                .stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Refusal.notFound("There is no such flight in the record."));
        return new OneFlightPresenter(row, clock.getZone(), ReaderUnits.of(ctx))
                .view(form, problem, said != null, said == null ? "" : said);
    }

    /** What is forecast from a flight, to be held against what it is after a correction. */
    private ForecastWords forecast(String flight) {
        return ForecastWords.of(record, flight);
    }

    /** Whether a flight counts, both ways; what was counted of an official one goes with it. */
    private void judge(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        String id = ctx.pathParam("id");
        if (typed.typed("verdict").equals("turns")) {
            turns(ctx, typed, id);
            return;
        }
        boolean valid = typed.typed("verdict").equals("valid");
        if (!valid && typed.typed("spoilt").isBlank()) {
            ctx.status(422);
            form(ctx, typed.with("spoilt", "Say why it says nothing of model and motor"), "");
            return;
        }
        ForecastWords before = forecast(id);
        Answer answer = ctx.formParam("remaining") == null
                ? forms.submit(
                        ctx, "flight.counts", decided(typed, id, valid ? FlightWorth.COUNTS : FlightWorth.LEFT_OUT))
                : forms.submit(ctx, "flight.told", told(typed, id, valid));
        answered(ctx, typed, answer, before);
    }

    /** The turns left, and nothing of whether it counts: a word about that which was typed beside them waits for its key. */
    private void turns(Context ctx, FormErrors typed, String id) {
        OneFlightView shown = flight(ctx, FormErrors.none(), "", null);
        if (!typed.typed("spoilt").strip().equals(shown.spoilt())
                || !typed.typed("contact").strip().equals(shown.contact())) {
            ctx.status(422);
            form(ctx, typed.with("spoilt", "Say by one of the two keys whether it counts or is left out"), "");
            return;
        }
        ForecastWords before = forecast(id);
        var told = new AfterFlight.Landed(
                id,
                typed.typed("remaining"),
                shown.seen().equals(FlightWorth.UNDECIDED) ? "" : shown.seen(),
                "",
                typed.typed().get("seen"),
                "later",
                typed.typed(AskedOnce.FIELD));
        answered(ctx, typed, forms.submit(ctx, "flight.told", told), before);
    }

    private static AfterFlight.Landed told(FormErrors typed, String id, boolean valid) {
        return new AfterFlight.Landed(
                id,
                typed.typed("remaining"),
                valid ? "" : typed.typed("spoilt"),
                valid ? "" : typed.typed("contact"),
                typed.typed().get("seen"),
                "yes",
                typed.typed(AskedOnce.FIELD));
    }

    static FlightWorth.Decided decided(FormErrors typed, String id, String verdict) {
        String reason = typed.typedOr("reason", typed.typed("spoilt"));
        return new FlightWorth.Decided(
                id, verdict, reason, typed.typed("contact"), typed.typed().get("seen"));
    }

    private void confirm(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        String id = ctx.pathParam("id");
        ForecastWords before = forecast(id);
        answered(ctx, typed, forms.submit(ctx, "flight.confirm", confirmed(ctx, id)), before);
    }

    static FlightWorth.Confirmed confirmed(Context ctx, String flight) {
        try {
            return new FlightWorth.Confirmed(flight, FlightWorth.numbers(ctx.formParams("number")));
        } catch (IllegalArgumentException e) {
            throw Refusal.malformed("That is no number of a flight. Load the page again and repeat it.");
        }
    }

    private void answered(Context ctx, FormErrors typed, Answer answer, ForecastWords before) {
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            String changed = before.changed(forecast(ctx.pathParam("id")));
            page.fragment(ctx, "review/_flight.jte", flight(ctx, FormErrors.none(), "", changed));
            return;
        }
        Map<String, String> wrong = answer instanceof Answer.Refused refused ? refused.fields() : Map.of();
        form(ctx, typed.withAll(wrong), wrong.isEmpty() ? words : "");
    }

    private void form(Context ctx, FormErrors typed, String problem) {
        page.fragment(ctx, "review/_flight.jte", flight(ctx, typed, problem, null));
    }
}
