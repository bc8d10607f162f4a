package org.skeinday.bench.web;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.attempt.web.MotorDemand;
import org.skeinday.attempt.web.WhoDoesWhat;
import org.skeinday.attempt.web.WindingPlaces;
import org.skeinday.bench.action.CountBreak;
import org.skeinday.bench.action.ReadingWord;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.steps.Moment;
import org.skeinday.steps.web.CautionsFor;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.WindStore;

/** Winding: the reader's keys, what the others see, and the turns afterwards. */
public final class WindingPages {
    private static final String NOBODY =
            "Nobody is called with a motor of yours. As soon as the captain calls an attempt"
                    + " with its motor, the plan and the reader's keys stand here.";
    private static final int LAST_FLIGHTS = 8;

    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;

    public WindingPages(ActStore record, FormActs forms, Page page, Clock clock) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.get(
                "/winding",
                Role.HELPER,
                ctx -> page.show(ctx, "Winding", "bench/winding.jte", view(ctx, FormErrors.none())));
        routes.get(
                "/winding/part",
                Role.HELPER,
                ctx -> page.fragment(ctx, "bench/_winding.jte", view(ctx, FormErrors.none())));
        routes.post(
                "/winding/gate",
                Role.HELPER,
                ctx -> told(ctx, "gate.pass", "passed", Map.of("passed", "reason"), "adult"));
        routes.post("/winding/count", Role.HELPER, this::count);
        routes.post("/winding/reading", Role.HELPER, this::reading);
        routes.post(
                "/winding/aim",
                Role.HELPER,
                ctx -> told(ctx, "attempt.aim", "launch", Map.of("aim-seen", "seen"), "launch", "ceiling", "unit"));
        routes.post(
                "/winding/unread",
                Role.HELPER,
                ctx -> told(ctx, "wind.unread", "stop", "stop", "backOff", "peak", "launch", "unit", AskedOnce.FIELD));
        routes.post(
                "/winding/broke-at",
                Role.HELPER,
                ctx -> told(
                        ctx,
                        "motor.break-counted",
                        CountBreak.FIELD,
                        Map.of(CountBreak.FIELD, "turns", "break", "seen"),
                        "motor",
                        AskedOnce.FIELD));
        routes.post(
                "/winding/landed",
                Role.HELPER,
                ctx -> told(
                        ctx,
                        "flight.told",
                        "remaining",
                        "remaining",
                        "spoilt",
                        "contact",
                        "counts",
                        "seen",
                        AskedOnce.FIELD));
    }

    private void count(Context ctx) {
        ofWind(ctx, () -> counted(ctx, forms));
    }

    private void reading(Context ctx) {
        ofWind(ctx, () -> readingWord(ctx, forms));
    }

    /** What is said of a wind, and what that does to the figures of its batch. */
    private void ofWind(Context ctx, Supplier<FormErrors> word) {
        refuseUnknownFlight(ctx);
        String wind = FormErrors.of(ctx).typed("wind");
        ForecastWords before = ForecastWords.ofWind(record, wind, ReaderUnits.of(ctx));
        FormErrors form = word.get();
        String changed = before.changed(ForecastWords.ofWind(record, wind, ReaderUnits.of(ctx)));
        page.fragment(ctx, "bench/_winding.jte", view(ctx, form.doing(changed)));
    }

    private static final Map<String, String> WORDS =
            Map.of("so", ReadingWord.SO, "left-out", ReadingWord.LEFT_OUT, "again", ReadingWord.AGAIN);

    /** One word about one reading of a wind. */
    static FormErrors readingWord(Context ctx, FormActs forms) {
        FormErrors typed = FormErrors.of(ctx);
        String word = typed.typed("word");
        String kind = WORDS.get(word);
        if (kind == null) {
            ctx.status(422);
            return typed.with(
                    "reading", "A reading was so, is left out or is asked about again, but this said '" + word + "'");
        }
        Answer answer = forms.submit(ctx, kind, Map.of("mark", typed.typed("mark")));
        return FormActs.errors(ctx, answer, "reading");
    }

    /** The crank turns of a wind, for an attempt or without one. */
    static FormErrors counted(Context ctx, FormActs forms) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = new HashMap<>();
        for (String field : List.of("wind", "atFull", "stop", "backOff", AskedOnce.FIELD)) {
            content.put(field, typed.typed(field));
        }
        content.put("offered", OfferedTurns.of(typed));
        if (typed.typed().containsKey("held")) {
            content.put("held", typed.typed("held"));
            content.put("unit", typed.typed("unit"));
        }
        return FormActs.errors(ctx, forms.submit(ctx, "wind.count", content), "stop");
    }

    /** An act about an attempt, with these fields of the form. @param otherwise beside which other words stand */
    private void told(Context ctx, String kind, String otherwise, String... fields) {
        told(ctx, kind, otherwise, Map.of(), fields);
    }

    /** The same. @param renamed fields of the form that have another name in the act, by their name in the form */
    private void told(Context ctx, String kind, String otherwise, Map<String, String> renamed, String... fields) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = new HashMap<>(Map.of("attempt", typed.typed("attempt")));
        for (String field : fields) {
            content.put(field, typed.typed(field));
        }
        renamed.forEach((name, inAct) -> content.put(inAct, typed.typed(name)));
        refuseUnknownFlight(ctx);
        ForecastWords before = ForecastWords.of(record, typed.typed("attempt"));
        FormErrors form = FormActs.errors(ctx, forms.submit(ctx, kind, content), otherwise);
        String changed = before.changed(ForecastWords.of(record, typed.typed("attempt")));
        page.fragment(ctx, "bench/_winding.jte", view(ctx, form.doing(changed)));
    }

    /** Before anything is saved: what is answered 404 has changed nothing. */
    private void refuseUnknownFlight(Context ctx) {
        String shown = shown(ctx);
        if (!shown.isEmpty()) {
            record.read(tx -> asked(tx, shown));
        }
    }

    private static AttemptNow asked(Tx tx, String shown) {
        return AttemptStore.find(tx, shown)
                .orElseThrow(() -> new Refusal(404, "There is no such attempt; look again."));
    }

    /** A flight that was asked for by name, in the address or by the form; else the attempt under way. */
    private static String shown(Context ctx) {
        String asked = ctx.queryParam("flight");
        String sent = asked == null && ctx.method().equals(HandlerType.POST) ? ctx.formParam("flight") : asked;
        return sent == null ? "" : sent;
    }

    private WindingView view(Context ctx, FormErrors form) {
        String device = Access.callerOf(ctx).device();
        String shown = shown(ctx);
        return record.read(tx -> {
            Optional<AttemptNow> underWay =
                    MotorDemand.toWind(tx, device, clock.millis()).stream().findFirst();
            Optional<AttemptNow> attempt = shown.isEmpty() ? underWay : Optional.of(asked(tx, shown));
            boolean listed = attempt.flatMap(a -> LiveAttempts.find(tx, a.id()))
                    .map(live -> live.phase().name())
                    .filter(name -> name.isBeforeRelease() || name.isUrgent())
                    .isEmpty();
            List<WindingView.Past> flights = listed ? PastFlights.of(tx, LAST_FLIGHTS, shown) : List.of();
            return attempt.flatMap(a -> life(tx, a)
                            .map(life -> of(ctx, tx, a, life, form)
                                    .listing(
                                            flights,
                                            shown,
                                            underWay.isPresent(),
                                            MotorDemand.beside(tx, a.id(), clock.millis()))))
                    .orElse(none(flights));
        });
    }

    private static Optional<MotorLife> life(Tx tx, AttemptNow attempt) {
        return Optional.ofNullable(attempt.motorId()).flatMap(id -> MotorLifeStore.find(tx, id));
    }

    private WindingView of(Context ctx, Tx tx, AttemptNow attempt, MotorLife life, FormErrors form) {
        AttemptEvidence known = LiveAttempts.evidence(tx, attempt.id()).orElseThrow();
        @Nullable
        Wind last = known.presentWind()
                .flatMap(w -> WindStore.find(tx, w.begun().id()))
                .orElse(null);
        boolean quiet = AttemptStore.quietNow(tx).isPresent();
        var cautions = new CautionsFor(tx, ctx, clock);
        return new WindingPresenter(tx, known, life, last, ReaderUnits.of(ctx))
                .view(
                        Access.callerOf(ctx),
                        quiet,
                        people(tx, LiveAttempt.of(known)),
                        clock.millis(),
                        form,
                        record.people()::name)
                .cautioned(cautions.at(Moment.BEFORE_WINDING), cautions.today());
    }

    /** Who does what until the release; of other teams nobody here is named. */
    private List<BenchView.Line> people(Tx tx, LiveAttempt attempt) {
        return EntryStore.find(tx, attempt.entryId()).filter(EntryAdded::own).stream()
                .filter(entry -> attempt.isToFly())
                .flatMap(entry -> Stream.concat(
                        WhoDoesWhat.of(tx, entry, attempt.number(), record.people()::name).lines().stream(),
                        WindingPlaces.line(tx, attempt).stream()))
                .map(line -> new BenchView.Line(line.label(), line.value()))
                .toList();
    }

    private static WindingView none(List<WindingView.Past> flights) {
        return new WindingView(
                "Winding",
                NOBODY,
                "",
                "",
                "",
                List.of(),
                List.of(),
                List.of(),
                "",
                "",
                false,
                false,
                false,
                null,
                WindingView.Reader.NOTHING,
                null,
                WindingView.More.none(flights),
                WindingView.At.NOWHERE,
                FormErrors.none());
    }
}
