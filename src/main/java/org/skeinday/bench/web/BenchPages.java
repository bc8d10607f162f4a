package org.skeinday.bench.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.FullHands;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.attempt.web.MotorDemand;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.bench.BenchOrder;
import org.skeinday.bench.action.MistakenBreak;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;

/** The Bench, one motor's page, the wall, and how long is waited. */
public final class BenchPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final Pace pace;

    public BenchPages(ActStore record, FormActs forms, Page page, Clock clock, Pace pace) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.pace = pace;
    }

    public void register(Routes routes) {
        routes.get("/bench", Role.HELPER, ctx -> page.show(ctx, "Bench", "bench/bench.jte", bench(ctx)));
        routes.get("/bench/part", Role.HELPER, this::part);
        routes.get(
                "/bench/motor/{motor}",
                Role.HELPER,
                ctx -> page.show(ctx, "Motor", "bench/motor.jte", motor(ctx, FormErrors.none())));
        routes.get(
                "/bench/motor/{motor}/part",
                Role.HELPER,
                ctx -> page.fragment(ctx, "bench/_motor.jte", motor(ctx, FormErrors.none())));
        routes.post("/bench/motor/{motor}/break", Role.COACH, this::judgeBreak);
        routes.post("/bench/motor/{motor}/not-broken", Role.CAPTAIN, ctx -> {
            FormErrors form = FormActs.errors(ctx, notBroken(ctx, forms, ctx.pathParam("motor")), MistakenBreak.FIELD);
            page.fragment(ctx, "bench/_motor.jte", motor(ctx, form));
        });
        routes.get("/bench/wall", Role.VIEWER, ctx -> page.show(ctx, "Wall", "bench/wall.jte", wall(ctx)));
        routes.get("/bench/wall/part", Role.VIEWER, ctx -> page.fragment(ctx, "bench/_wall.jte", wall(ctx)));
        routes.get(
                "/bench/waits",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Waits", "bench/waits.jte", waits(FormErrors.none(), "")));
        routes.post("/bench/waits", Role.CAPTAIN, this::change);
    }

    private void part(Context ctx) {
        String alike = ReaderUnits.of(ctx).name() + " " + Access.callerOf(ctx).person();
        page.shared(ctx, alike, clock, "bench/_bench.jte", () -> bench(ctx));
    }

    private MotorRows rows(Context ctx) {
        return new MotorRows(
                ReaderUnits.of(ctx),
                clock.getZone(),
                clock.millis(),
                pace.undo().toMillis());
    }

    private BenchView bench(Context ctx) {
        return record.read(tx -> {
            List<String> missing = new ArrayList<>();
            List<BenchView.Row> rows = rows(ctx, tx, missing);
            List<BenchView.Jump> jumps = MotorLifeStore.openJumps(tx).stream()
                    .map(j -> new BenchView.Jump(j.id(), BenchWords.jump(j, clock.getZone())))
                    .toList();
            String none = rows.isEmpty()
                    ? "There is no motor yet. Add batches and motors in Prepare: then each stands here with what to do"
                            + " to it next."
                    : String.join(" ", missing);
            return new BenchView(none, rows, jumps, Access.callerOf(ctx).role().covers(Role.CAPTAIN), hands(ctx, tx));
        });
    }

    private FullHands hands(Context ctx, Tx tx) {
        return MotorDemand.hands(tx, Access.callerOf(ctx).person(), clock.millis());
    }

    private List<BenchView.Row> rows(Context ctx, Tx tx, List<String> missing) {
        Map<String, String> needs = needs(tx, missing);
        List<String> byHand = MotorLifeStore.byHand(tx);
        MotorUses uses = MotorUseStore.all(tx);
        MotorRows rows = rows(ctx);
        return BenchOrder.of(MotorLifeStore.all(tx), byHand, List.copyOf(needs.keySet())).stream()
                .map(life -> rows.row(life, needs, byHand, uses.of(life.motor().id())))
                .toList();
    }

    /** Without the order of need every motor stands here all the same. @param missing takes the sentence that says so */
    private Map<String, String> needs(Tx tx, List<String> missing) {
        return Apart.made("What the attempts need", () -> MotorDemand.of(tx, clock.millis()), words -> {
            missing.add(words);
            return Map.of();
        });
    }

    private BenchView.Wall wall(Context ctx) {
        return new BenchView.Wall(record.read(tx -> rows(ctx, tx, new ArrayList<>())).stream()
                .filter(r -> r.until() > 0)
                .toList());
    }

    private void judgeBreak(Context ctx) {
        String motor = ctx.pathParam("motor");
        ForecastWords before = ForecastWords.ofMotor(record, motor, ReaderUnits.of(ctx));
        FormErrors form = FormActs.errors(ctx, breakWord(ctx, forms, motor), "cause");
        String did = before.changed(ForecastWords.ofMotor(record, motor, ReaderUnits.of(ctx)));
        page.fragment(ctx, "bench/_motor.jte", motor(ctx, form.doing(did)));
    }

    /** What the form of a break says of it: its cause, or that its numbers were so. */
    public static Answer breakWord(Context ctx, FormActs forms, String motor) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = new HashMap<>(Map.of("motor", motor));
        if (typed.typed().containsKey("seen")) {
            content.put("seen", typed.typed("seen"));
        }
        if (ctx.formParam("so") != null) {
            return forms.submit(ctx, "motor.break-so", content);
        }
        content.put("cause", typed.typed("cause"));
        return forms.submit(ctx, "motor.break-judged", content);
    }

    /** What the form says of a break that was none. */
    public static Answer notBroken(Context ctx, FormActs forms, String motor) {
        FormErrors typed = FormErrors.of(ctx);
        return forms.submit(
                ctx,
                "motor.not-broken",
                Map.of(
                        "motor", motor,
                        "reason", typed.typed(MistakenBreak.FIELD),
                        "seen", typed.typed("break")));
    }

    private BenchView.Motor motor(Context ctx, FormErrors form) {
        return record.read(tx -> MotorLifeStore.find(tx, ctx.pathParam("motor"))
                .map(life -> motor(ctx, tx, life, form))
                .orElseThrow(() -> Refusal.notFound("There is no such motor. Was it removed in Prepare?")));
    }

    private BenchView.Motor motor(Context ctx, Tx tx, MotorLife life, FormErrors form) {
        Map<String, String> needs = needs(tx, new ArrayList<>());
        String motor = life.motor().id();
        List<BenchView.Line> facts = List.of(
                new BenchView.Line("team", life.motor().team()),
                new BenchView.Line(
                        "batch",
                        BatchStore.find(tx, life.motor().batchId())
                                .map(BatchAdded::name)
                                .orElse("–")));
        List<BenchView.Line> steps = MotorLifeStore.stepsOf(tx, motor).stream()
                .map(s -> new BenchView.Line(
                        PageWords.clock(s.atMs(), clock.getZone()),
                        MotorRows.done(
                                s, s.personId() == null ? null : record.people().name(s.personId()))))
                .toList();
        List<BenchView.Line> mistaken = MotorLifeStore.mistaken(tx, motor).stream()
                .map(m -> new BenchView.Line(
                        PageWords.clock(m.atMs(), clock.getZone()),
                        "It did not break (" + m.reason() + ")"
                                + (m.personId() == null
                                        ? ""
                                        : ", " + record.people().name(m.personId()))))
                .toList();
        int uses = MotorUseStore.all(tx).of(motor);
        List<String> byHand = MotorLifeStore.byHand(tx);
        Role role = Access.callerOf(ctx).role();
        BenchView.@Nullable Broke broke =
                BreakWords.of(tx, life.motor(), role.covers(Role.COACH), form).orElse(null);
        return new BenchView.Motor(
                rows(ctx).row(life, needs, byHand, uses),
                life.motor().batchId(),
                facts,
                Stream.concat(mistaken.stream(), steps.stream()).toList(),
                role.covers(Role.CAPTAIN),
                hands(ctx, tx),
                broke,
                form.did(),
                broke == null ? form.message(MistakenBreak.FIELD) + form.message("cause") : "");
    }

    private void change(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, Object> content = Map.of(
                "name", typed.typed("name"),
                "least", typed.typed("least"),
                "wished", typed.typed("wished"),
                "longest", typed.typed("longest"),
                "required", typed.typed("required").equals("yes"));
        Answer answer = forms.submit(ctx, "bench.wait", content);
        String saved = answer instanceof Answer.Saved ? typed.typed("name") : "";
        page.fragment(ctx, "bench/_waits.jte", waits(FormActs.errors(ctx, answer, "wait"), saved));
    }

    private BenchView.Waits waits(FormErrors form, String saved) {
        return record.read(tx -> new BenchView.Waits(
                java.util.Arrays.stream(Wait.Name.values())
                        .map(name -> wait(MotorLifeStore.wait(tx, name), form))
                        .toList(),
                saved));
    }

    private static BenchView.WaitRow wait(Wait wait, FormErrors form) {
        boolean own = form.typed("name").equals(wait.name());
        String longest = wait.maximumS() == null ? "" : BenchWords.typed(wait.maximumS());
        return new BenchView.WaitRow(
                wait.name(),
                switch (wait.name()) {
                    case "soak" -> "Lubricant soaks";
                    case "hold" -> "Held stretched, to break it in";
                    default -> "Rest";
                },
                own ? form.typed("least") : BenchWords.typed(wait.minimumS()),
                own ? form.typed("wished") : BenchWords.typed(wait.preferredS()),
                own ? form.typed("longest") : longest,
                own ? form.typed("required").equals("yes") : wait.required(),
                own ? form.message("wait") : "");
    }
}
