package org.skeinday.attempt.web;

import io.javalin.http.Context;
import java.util.Map;
import java.util.stream.Collectors;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.CallAttempt;
import org.skeinday.attempt.action.TakeWatch;
import org.skeinday.attempt.action.TypeWatchTime;
import org.skeinday.attempt.store.Assignments;
import org.skeinday.platform.record.ActStore;

/** What the forms of Now say, as their acts take it. A number that is none becomes one that no act takes. */
final class NowForms {
    private NowForms() {}

    static CallAttempt.Call call(ActStore record, Context ctx) {
        String number = NowPages.field(ctx, "number");
        String entry = NowPages.field(ctx, "entry");
        Integer offered = number.matches("\\d{1,3}") ? Integer.valueOf(number) : null;
        return NowPages.field(ctx, "assigned").equals("yes")
                ? record.read(tx -> AssignedCall.of(tx, entry, offered))
                : new CallAttempt.Call(
                        entry, ctx.formParam("model"), ctx.formParam("motor"), offered, ctx.formParam("meant"));
    }

    static Map<String, Object> moved(Context ctx) {
        String seconds = NowPages.field(ctx, "seconds");
        String seen = NowPages.field(ctx, "seen");
        return Map.of(
                "entry", NowPages.field(ctx, "entry"),
                "seconds", seconds.matches("-?\\d{1,3}") ? Integer.parseInt(seconds) : 0,
                "seen", seen.matches("\\d{1,15}") ? Long.parseLong(seen) : 0);
    }

    static Map<String, Object> hands(Context ctx) {
        String number = NowPages.field(ctx, "number");
        return Map.of(
                "entry", NowPages.field(ctx, "entry"),
                "number", number.matches("\\d{1,3}") ? Integer.parseInt(number) : 0,
                "seen", NowPages.field(ctx, "hands-seen"),
                "people",
                        Assignments.TASKS.stream()
                                .collect(Collectors.toMap(task -> task, task -> NowPages.field(ctx, "hand-" + task))));
    }

    static Map<String, Object> aloft(Context ctx) {
        boolean byPerson = NowPages.field(ctx, "to").equals("caught-by-person");
        return Map.of(
                "attempt",
                NowPages.field(ctx, "attempt"),
                "say",
                byPerson ? "caught" : NowPages.field(ctx, "to"),
                "by",
                byPerson ? "person" : "building",
                "with",
                NowPages.field(ctx, "steered"));
    }

    /** Which watch a device becomes. @param slot 1 to 3 */
    static TakeWatch.TakePlace takenWatch(Context ctx, String slot) {
        return new TakeWatch.TakePlace(
                NowPages.field(ctx, "attempt"),
                Integer.parseInt(slot),
                NowPages.field(ctx, "over").equals("yes"),
                NowPages.field(ctx, "change").equals("yes"),
                NowPages.field(ctx, "allowed"),
                GivenPin.isThere(ctx));
    }

    /** What {@code _type-time.jte} sends. */
    static TypeWatchTime.Typed typedTime(Context ctx, String attempt) {
        String typedSlot = NowPages.field(ctx, "typed-slot");
        int slot = typedSlot.matches("[1-9]") ? Integer.parseInt(typedSlot) : 0;
        String[] seen = NowPages.field(ctx, "typed-seen").split(" ", -1);
        return new TypeWatchTime.Typed(
                attempt,
                slot,
                NowPages.field(ctx, "typed"),
                NowPages.field(ctx, "typed-at"),
                NowPages.field(ctx, AskedOnce.FIELD),
                slot > 0 && slot <= seen.length ? seen[slot - 1] : "");
    }
}
