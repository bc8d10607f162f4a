package org.skeinday.attempt.action;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.skeinday.attempt.LastAct;
import org.skeinday.attempt.store.BreakRecord;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;

/** Whoever comes second is told who was quicker, with what and when. */
final class Quicker {
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("HH:mm:ss");

    private final Supplier<Map<String, String>> people;

    /** @param people the names known now, by person id */
    Quicker(Supplier<Map<String, String>> people) {
        this.people = people;
    }

    /** The same kind of act, whose answer to one that is outdated says so. @param attempt that the act is about, or the motor alone */
    <C> ActKind<C> told(String kind, Class<C> content, ActKind.Action<C> action, Function<C, String> attempt) {
        return told(kind, content, action, (tx, act) -> attempt.apply(act));
    }

    /** The same where the record tells the attempt. */
    <C> ActKind<C> told(String kind, Class<C> content, ActKind.Action<C> action, BiFunction<Tx, C, String> attempt) {
        return new ActKind<>(kind, content, (tx, context, act) -> {
            Decision decision = action.decide(tx, context, act);
            return decision instanceof Decision.Outdated outdated
                    ? new Decision.Outdated(outdated.whatChanged() + who(tx, context, attempt.apply(tx, act)))
                    : decision;
        });
    }

    private String who(Tx tx, ActContext context, String attempt) {
        return BreakRecord.lastAct(tx, attempt)
                .map(last ->
                        " " + name(last) + " said '" + last.said() + "' at " + at(last.atMs(), context.zone()) + ".")
                .orElse("");
    }

    private String name(LastAct last) {
        return Optional.ofNullable(last.personId())
                .map(id -> people.get().get(id))
                .orElse(last.device().equals("laptop") ? "The laptop" : "Another device");
    }

    private static String at(long ms, ZoneId zone) {
        return SECOND.format(Instant.ofEpochMilli(ms).atZone(zone));
    }
}
