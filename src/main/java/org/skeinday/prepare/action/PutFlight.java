package org.skeinday.prepare.action;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.store.FlightStore;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.exchange.DayFiles;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** What a form of practice adds to a row: unlikely numbers are asked about, and what it only proposed is marked offered. */
public final class PutFlight {
    private static final Map<Measured, String> COLUMNS = new EnumMap<>(Map.of(
            Measured.CRANK_TURNS, "crank turns",
            Measured.PEAK_TORQUE, "stop torque",
            Measured.LAUNCH_TORQUE, "launch torque",
            Measured.BACK_OFF, "back off",
            Measured.REMAINING, "remaining",
            Measured.TIME, "time"));

    private PutFlight() {}

    /** The form's column of what was measured; of the flight itself that of its time. */
    public static String column(Measured what) {
        return COLUMNS.getOrDefault(what, "time");
    }

    /** What is asked before the row is taken; empty when nothing is. */
    static Optional<Decision> asked(Tx tx, PutRow.Put put, DayFiles.Read read) {
        return flown(read)
                .flatMap(told -> AskedOnce.about(
                        tx,
                        told.flight(EvidenceStore.of(tx, told.id())),
                        FlightStore.find(tx, told.id())
                                .map(before -> before.flight(ValueMarks.NONE))
                                .orElse(null),
                        put.insist(),
                        PutFlight::column));
    }

    /** One mark for each number that the form proposed and nobody confirmed. */
    static List<Fact> offered(ActContext context, PutRow.Put put, DayFiles.Read read) {
        List<String> columns = put.offered() == null ? List.of() : put.offered();
        List<Fact> facts = new ArrayList<>();
        for (PracticeFlown told : flown(read).stream().toList()) {
            Flight flight = told.flight(ValueMarks.NONE);
            COLUMNS.forEach((what, column) -> {
                if (columns.contains(column) && flight.number(what) != null) {
                    facts.add(Fact.of("flight.marked", mark(context, flight, what)));
                }
            });
        }
        return facts;
    }

    private static ValueMarked mark(ActContext context, Flight flight, Measured what) {
        return new ValueMarked(
                flight.id(),
                what.word(),
                Objects.requireNonNull(flight.number(what)),
                Source.OFFERED.word(),
                false,
                null,
                context.now().toEpochMilli());
    }

    private static Optional<PracticeFlown> flown(DayFiles.Read read) {
        return read.facts().stream()
                .map(DayFiles.Named::body)
                .filter(PracticeFlown.class::isInstance)
                .map(PracticeFlown.class::cast)
                .findFirst();
    }
}
