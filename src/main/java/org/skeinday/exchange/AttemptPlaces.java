package org.skeinday.exchange;

import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptStation;

/** What stands in a row of {@code attempts.csv} about the winding place, as it was when the attempt was wound there. */
final class AttemptPlaces {
    private static final String NAME = "wound at";
    private static final String METER = "meter";
    private static final String DIVISION = "division";
    private static final String FULL_SCALE = "full scale";
    private static final String RATIO = "winder ratio";

    static final List<Column> COLUMNS = List.of(
            Column.text(NAME, 120),
            Column.text(METER, 60),
            Column.torque(DIVISION),
            Column.torque(FULL_SCALE),
            Column.plain(RATIO));

    private AttemptPlaces() {}

    /** A name that no winding place has is one that is called otherwise now, or is prepared no more: it is kept as it was. */
    static Optional<AttemptStation> take(Row row, ImportContext context, String attempt) {
        Quantity division = Quantity.Kind.TORQUE.read(row, DIVISION, 0.0001, 10_000);
        Quantity fullScale = Quantity.Kind.TORQUE.read(row, FULL_SCALE, 0.0001, 10_000);
        Double ratio = Numbers.decimal(row, RATIO, 1, 50);
        String name = row.text(NAME);
        if (!name.isEmpty()) {
            var at = new AttemptStation(
                    attempt,
                    context.stations.id(name).orElse(null),
                    name,
                    row.optional(METER),
                    Quantity.siOrNull(division),
                    Quantity.textOrNull(division),
                    Quantity.siOrNull(fullScale),
                    Quantity.textOrNull(fullScale),
                    ratio,
                    null);
            context.take(row, "attempt.station", () -> at);
            return Optional.of(at);
        }
        List.of(METER, DIVISION, FULL_SCALE, RATIO).stream()
                .filter(column -> !row.isEmpty(column))
                .findFirst()
                .ifPresent(column -> row.error(
                        column,
                        "this is known of the winding place, but not which one it was",
                        "write its name in " + NAME + ", or leave this empty"));
        return Optional.empty();
    }

    static void put(ExportContext book, String attempt, Table.Cells cells) {
        book.place(attempt)
                .ifPresent(at -> cells.put(NAME, at.name())
                        .put(METER, at.meter())
                        .put(DIVISION, Quantity.Kind.TORQUE.text(at.divisionNmm(), at.divisionTyped()))
                        .put(FULL_SCALE, Quantity.Kind.TORQUE.text(at.fullScaleNmm(), at.fullScaleTyped()))
                        .put(RATIO, Numbers.text(at.winderRatio())));
    }
}
