package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptStation;
import org.skeinday.attempt.LaterUses;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.UseNumber;
import org.skeinday.attempt.WindingEvidence;
import org.skeinday.contest.EventAdded;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;

/**
 * Which use of its motor each row of the files says that it was. What the other rows tell by themselves is left to them; the
 * rest is kept: a file of one day tells of a motor that flew on others, too.
 */
final class UsesOfRows {
    private static final String USE = "use";

    private final List<UseNumber> told = new ArrayList<>();

    static Column column() {
        return Column.plain(USE);
    }

    /** Whether it is what no form asks: there it follows from the motor's other flights. */
    static boolean isBeside(Column column) {
        return column.name().equals(USE);
    }

    void take(Row row, String flight, String motor) {
        Integer number = Numbers.whole(row, USE, 1, UseNumber.MOST);
        if (number == null || row.isWrong()) {
            return;
        }
        if (motor.isEmpty()) {
            row.error(USE, "this is a use of no motor", "name the motor, or leave this empty");
            return;
        }
        told.add(new UseNumber(flight, motor, number));
    }

    static void put(ExportContext book, String flight, Table.Cells cells) {
        cells.put(USE, book.use(flight));
    }

    /** @param there what the record has already @param taken what the files bring */
    List<DayFiles.Named> facts(Day there, List<DayFiles.Named> taken) {
        if (told.isEmpty()) {
            return List.of();
        }
        MotorUses rows = MotorUses.of(
                WindingEvidence.ofFiles(
                        both(there.events(), taken, EventAdded.class),
                        both(there.attempts(), taken, AttemptImported.class),
                        both(there.flights(), taken, PracticeFlown.class),
                        both(there.more().places(), taken, AttemptStation.class)),
                both(there.motors(), taken, MotorAdded.class),
                both(there.batches(), taken, BatchAdded.class));
        return told.stream()
                .filter(use -> rows.has(use.motorId(), use.flightId()))
                .map(use -> new LaterUses(
                        use.flightId(), use.motorId(), rows.number(use.motorId(), use.flightId()) - use.number()))
                .filter(later -> later.uses() != 0)
                .map(later -> new DayFiles.Named("flight.later-uses", later))
                .toList();
    }

    private static <T> List<T> both(List<T> there, List<DayFiles.Named> taken, Class<T> kind) {
        return Stream.concat(
                        there.stream(),
                        taken.stream()
                                .map(DayFiles.Named::body)
                                .filter(kind::isInstance)
                                .map(kind::cast))
                .toList();
    }
}
