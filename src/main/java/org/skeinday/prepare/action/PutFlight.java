package org.skeinday.prepare.action;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.attempt.Flight;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.CameFrom;
import org.skeinday.attempt.store.FlightStore;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.Source;
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

    /** Where its numbers came from: those that the form proposed and nobody confirmed are offered, those put right typed. */
    static List<Fact> marks(Tx tx, ActContext context, PutRow.Put put, DayFiles.Read read) {
        return flown(read).map(told -> marks(tx, context, put, told)).orElseGet(List::of);
    }

    private static List<Fact> marks(Tx tx, ActContext context, PutRow.Put put, PracticeFlown told) {
        List<String> columns = put.offered() == null ? List.of() : put.offered();
        Flight flight = told.flight(ValueMarks.NONE);
        List<Fact> facts = new ArrayList<>();
        Set<Measured> offered = EnumSet.noneOf(Measured.class);
        COLUMNS.forEach((what, column) -> {
            Double number = flight.number(what);
            if (columns.contains(column) && number != null) {
                offered.add(what);
                facts.add(CameFrom.mark(context, flight.id(), what, number, Source.OFFERED));
            }
        });
        FlightStore.find(tx, told.id())
                .map(before -> before.flight(EvidenceStore.of(tx, told.id())))
                .ifPresent(before -> facts.addAll(CameFrom.changed(context, before, flight, Source.TYPED, offered)));
        return facts;
    }

    private static Optional<PracticeFlown> flown(DayFiles.Read read) {
        return read.facts().stream()
                .map(DayFiles.Named::body)
                .filter(PracticeFlown.class::isInstance)
                .map(PracticeFlown.class::cast)
                .findFirst();
    }
}
