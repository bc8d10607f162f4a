package org.skeinday.hall;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Length;
import org.skeinday.units.PlainNumber;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code hall.described}: a hall as it was found, and the distances that are kept there; again under the same name
 * when something changed.
 *
 * @param ceilingMm 1 to 150 m; null when nobody measured
 * @param obstructions what hangs lower than the ceiling, at most {@link #MOST}, each name once
 * @param distances only those that differ from the usual
 * @param note fans, doors, house rules, as typed; may be empty
 * @param atMs by the server's clock, epoch ms
 */
public record HallDescribed(
        String hall,
        @Nullable Double ceilingMm,
        @Nullable String ceilingTyped,
        List<Obstruction> obstructions,
        List<Kept> distances,
        String note,
        long atMs,
        @Nullable String personId) {
    /** More are a list that nobody reads. */
    public static final int MOST = 12;

    /** Characters of a hall's name, of a thing's in it, of a note. */
    public static final int LONGEST_HALL = 120;

    static final int LONGEST_NAME = 80;
    public static final int LONGEST_NOTE = 400;

    /** @param heightMm of its lower edge over the floor, 0.5 to 150 m */
    public record Obstruction(String name, double heightMm, String heightTyped) {
        public Obstruction {
            Preconditions.filled("The obstruction's name", name, LONGEST_NAME);
            Preconditions.within("The obstruction's height in mm", heightMm, 500, 150_000);
        }
    }

    /** @param word of a {@link Distance} */
    public record Kept(String word, double mm, String typed) {
        public Kept {
            EnumWords.parse("A distance of a winding place", Distance.class, word)
                    .check(Length.ofMillimetres(mm));
        }
    }

    public HallDescribed {
        Preconditions.filled("The hall's name", hall, LONGEST_HALL);
        Preconditions.atMost("The note", note, LONGEST_NOTE);
        obstructions = List.copyOf(obstructions);
        distances = List.copyOf(distances);
        if (obstructions.size() > MOST) {
            throw new IllegalArgumentException(
                    "A hall must have at most " + MOST + " obstructions, but had " + obstructions.size());
        }
        Set<String> names = new HashSet<>();
        for (Obstruction o : obstructions) {
            if (!names.add(o.name())) {
                throw new IllegalArgumentException(
                        "Each obstruction must stand once, but '" + o.name() + "' stands there twice");
            }
        }
        if (ceilingMm != null) {
            Preconditions.within("The ceiling in mm", ceilingMm, 1000, 150_000);
            belowCeiling(ceilingMm, obstructions);
        }
    }

    private static void belowCeiling(double ceiling, List<Obstruction> obstructions) {
        for (Obstruction o : obstructions) {
            if (o.heightMm() > ceiling) {
                throw new IllegalArgumentException("An obstruction must not be above the ceiling of "
                        + PlainNumber.of(ceiling) + " mm, but '" + o.name() + "' was at " + PlainNumber.of(o.heightMm())
                        + " mm");
            }
        }
    }

    /** What a model that climbs meets first, the ceiling apart. */
    public Optional<Obstruction> lowest() {
        return obstructions.stream().min(Comparator.comparingDouble(Obstruction::heightMm));
    }

    /** How high a model may climb before it meets something: the lowest obstruction, else the ceiling. */
    public Optional<Length> clearHeight() {
        return lowest().map(Obstruction::heightMm)
                .or(() -> Optional.ofNullable(ceilingMm))
                .map(Length::ofMillimetres);
    }

    /** Distances below the usual, as they were typed: whoever reads a verdict must know. */
    public List<String> lessThanUsual() {
        return distances.stream()
                .filter(k ->
                        k.mm() < Distance.ofWord(k.word()).orElseThrow().usual().millimetres())
                .map(k -> Distance.ofWord(k.word()).orElseThrow().words() + ": " + k.typed())
                .toList();
    }

    /** The distances to keep in this hall. */
    public Separation separation() {
        Map<Distance, Length> set = new EnumMap<>(Distance.class);
        distances.forEach(k -> set.put(Distance.ofWord(k.word()).orElseThrow(), Length.ofMillimetres(k.mm())));
        return Separation.with(set);
    }
}
