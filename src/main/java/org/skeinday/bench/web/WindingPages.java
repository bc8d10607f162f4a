package org.skeinday.bench.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.web.Needed;
import org.skeinday.attempt.web.ReaderUnits;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Access;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Record;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.WindStore;

/** Winding: the reader's keys, what the others see, and the turns afterwards. */
public final class WindingPages {
    private static final String NOBODY =
            "Nobody is called with a motor of yours. As soon as the captain calls an attempt"
                    + " with its motor, the plan and the reader's keys stand here.";
    private final Record record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;

    public WindingPages(Record record, FormActs forms, Page page, Clock clock) {
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
        routes.post("/winding/count", Role.HELPER, this::count);
    }

    private void count(Context ctx) {
        page.fragment(ctx, "bench/_winding.jte", view(ctx, counted(ctx, forms)));
    }

    /** Sends the counts as typed; what is wrong with them comes back. */
    static FormErrors counted(Context ctx, FormActs forms) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> content = Map.of(
                "wind", typed.typed("wind"),
                "atFull", typed.typed("atFull"),
                "stop", typed.typed("stop"),
                "backOff", typed.typed("backOff"));
        return FormActs.errors(ctx, forms.submit(ctx, "wind.count", content), "stop");
    }

    private WindingView view(Context ctx, FormErrors form) {
        String device = Access.callerOf(ctx).device();
        return record.read(tx -> Needed.toWind(tx)
                .flatMap(attempt -> life(tx, attempt).map(life -> of(ctx, tx, attempt, life, device, form)))
                .orElse(none()));
    }

    private static Optional<MotorLife> life(Tx tx, AttemptNow attempt) {
        return Optional.ofNullable(attempt.motorId()).flatMap(id -> MotorLifeStore.find(tx, id));
    }

    private WindingView of(Context ctx, Tx tx, AttemptNow attempt, MotorLife life, String device, FormErrors form) {
        List<Wind> winds = WindStore.ofAttempt(tx, attempt.id());
        Wind last = winds.isEmpty() ? null : winds.get(winds.size() - 1);
        boolean quiet = AttemptStore.quietNow(tx).isPresent();
        return new WindingOf(tx, attempt, life, last, ReaderUnits.of(ctx)).view(device, quiet, clock.millis(), form);
    }

    private static WindingView none() {
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
                false,
                false,
                false,
                null,
                new WindingView.Reader("", "", "", "", "", "", "", "", ""),
                null);
    }
}
