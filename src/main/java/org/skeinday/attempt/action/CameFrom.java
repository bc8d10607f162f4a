package org.skeinday.attempt.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Flight;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Fact;

/** Writes down where numbers of a flight came from: what is as it was keeps what was said of it, what is new came so. */
public final class CameFrom {
    private CameFrom() {}

    /** Numbers that were told anew. @param before how it stood @param after how it stands with what was told */
    public static List<Fact> changed(ActContext context, Flight before, Flight after, Source source) {
        return changed(context, before, after, source, Set.of());
    }

    /** The same. @param without what somebody says more of than that it came so */
    public static List<Fact> changed(
            ActContext context, Flight before, Flight after, Source source, Set<Measured> without) {
        List<Fact> facts = new ArrayList<>();
        for (Measured what : Measured.values()) {
            Double number = after.number(what);
            if (number != null
                    && !without.contains(what)
                    && !number.equals(before.number(what))
                    && before.said().marks().source(what, number) != source) {
                facts.add(mark(context, after.id(), what, number, source));
            }
        }
        return facts;
    }

    /** Of one number that nobody has confirmed. @param number in the record's own unit, null for the flight itself */
    public static Fact mark(ActContext context, String flight, Measured what, @Nullable Double number, Source source) {
        return Fact.of(
                "flight.marked",
                new ValueMarked(
                        flight,
                        what.word(),
                        number,
                        source.word(),
                        false,
                        null,
                        context.now().toEpochMilli()));
    }
}
