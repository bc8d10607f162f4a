package org.skeinday.exchange;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.Terms;

/** Which motors entries have declared, what they weigh, and what their event's terms allow. */
final class Declared {
    private static final String RIGHT = "declare a lighter motor, or correct the limit in terms.csv";
    private static final String RIGHT_IN_FORM = "declare a lighter motor, or correct the limit of the event";

    private final Map<String, Terms> terms = new HashMap<>();
    private final Map<String, String> eventOf = new HashMap<>();
    private final Map<String, Set<String>> motors = new HashMap<>();
    /** The other way round: asked for each motor of a season, while each event has its own entries. */
    private final Map<String, Set<String>> entries = new HashMap<>();

    private final Map<String, Weight> weights = new HashMap<>();

    /** Grams, and as somebody typed it. */
    record Weight(double grams, String text) {}

    Declared(Day there) {
        there.more().terms().forEach(this::holds);
        there.motors().forEach(m -> weights.put(m.id(), new Weight(m.massG(), m.massTyped())));
        there.more().inspections().forEach(i -> {
            if (i.massG() != null && weights.containsKey(i.motorId())) {
                weights.put(i.motorId(), new Weight(i.massG(), Quantity.Kind.MASS.text(i.massG(), i.massTyped())));
            }
        });
        there.entries().forEach(e -> eventOf.put(e.id(), e.eventId()));
        there.more().entryMotors().forEach(m -> add(m.entryId(), m.motorId()));
    }

    void holds(Terms event) {
        terms.put(event.eventId(), event);
    }

    void weighs(String motor, @Nullable Quantity mass) {
        if (mass != null) {
            weights.put(motor, new Weight(mass.si(), mass.text()));
        }
    }

    private void add(String entry, String motor) {
        motors.computeIfAbsent(entry, e -> new HashSet<>()).add(motor);
        entries.computeIfAbsent(motor, m -> new LinkedHashSet<>()).add(entry);
    }

    /** The entries that have declared this motor. */
    Set<String> entriesOf(String motor) {
        return entries.getOrDefault(motor, Set.of());
    }

    /** The motors that the entries of this event have declared. */
    Map<String, Set<String>> of(String event) {
        Map<String, Set<String>> of = new HashMap<>();
        motors.forEach((entry, declared) -> {
            if (event.equals(eventOf.get(entry))) {
                of.put(entry, declared);
            }
        });
        return of;
    }

    /** Notes a motor that is over the limit. @param wrong which one it is, and {@link #over} */
    static void noteOver(Row row, String column, String wrong) {
        row.error(column, wrong, RIGHT, RIGHT_IN_FORM);
    }

    /** By how much this motor is over the limit of the entry's event, in words; empty when it is not. */
    Optional<String> over(String entry, String motor) {
        Terms event = terms.get(eventOf.getOrDefault(entry, ""));
        Weight weight = weights.get(motor);
        if (event == null || event.motorLimitG() == null || weight == null || weight.grams <= event.motorLimitG()) {
            return Optional.empty();
        }
        return Optional.of(" weighs " + weight.text + ", over the limit of "
                + Quantity.Kind.MASS.text(event.motorLimitG(), event.motorLimitTyped()));
    }

    /** Takes an entry's motors in, and notes what its event does not allow. */
    void check(Row row, String event, String entry, List<String> declared, Names names) {
        eventOf.put(entry, event);
        declared.forEach(motor -> add(entry, motor));
        for (String motor : declared) {
            over(entry, motor).ifPresent(over -> noteOver(row, "motors", names.nameOf(motor) + over));
        }
        Terms asked = terms.get(event);
        Integer most = asked == null ? null : asked.declaredMotors();
        if (most != null && declared.size() > most) {
            row.error(
                    "motors",
                    declared.size() + " motors are declared and the event allows " + most,
                    "keep at most " + most);
        }
    }
}
