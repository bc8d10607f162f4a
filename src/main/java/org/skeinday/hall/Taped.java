package org.skeinday.hall;

import java.util.Locale;
import java.util.Optional;
import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/** Where something stands, as a person measures it with a tape from a lane: two numbers and a side. */
public sealed interface Taped {
    /**
     * Tapes that miss each other by no more, mm, are taken as a point on the line: nobody reads a tape along a floor
     * better (own default).
     */
    double READ_MM = 10;

    /** Why the two numbers cannot both be right, and what would be; empty when they can. */
    Optional<String> cannotMeet(Lane lane);

    /**
     * The place on the floor.
     *
     * @throws IllegalArgumentException with the words of {@link #cannotMeet}
     */
    Spot on(Lane lane);

    /** So far along the line from the mount, and at a right angle so far beside it. */
    static Taped beside(Length fromMount, Length beside, Side side) {
        return new Beside(fromMount.millimetres(), beside, side);
    }

    /** Behind the mount: so far from it along the lengthened line, and so far beside that. */
    static Taped behindMount(Length behind, Length beside, Side side) {
        return new Beside(-behind.millimetres(), beside, side);
    }

    /** So far from each end of the lane. */
    static Taped fromEnds(Length fromMount, Length fromWinder, Side side) {
        return new FromEnds(fromMount, fromWinder, side);
    }

    /** @param alongMm from the mount towards the winder, negative behind the mount */
    record Beside(double alongMm, Length beside, Side side) implements Taped {
        public Beside {
            Preconditions.within("A distance along the line in mm", alongMm, -100_000, 160_000);
            Preconditions.within("A distance beside the line in mm", beside.millimetres(), 0, 100_000);
        }

        @Override
        public Optional<String> cannotMeet(Lane lane) {
            return Optional.empty();
        }

        @Override
        public Spot on(Lane lane) {
            return new Spot(alongMm, side.sign() * beside.millimetres());
        }
    }

    /**
     * Trilateration with two distances: along = (a² − b² + L²) / 2L, beside = √(a² − along²), from the two circles'
     * equations. Close to the line a small error of a tape is a large one beside it: there {@link Beside} is better.
     */
    record FromEnds(Length fromMount, Length fromWinder, Side side) implements Taped {
        public FromEnds {
            Preconditions.within("A distance from the mount in mm", fromMount.millimetres(), 0, 100_000);
            Preconditions.within("A distance from the winder end in mm", fromWinder.millimetres(), 0, 100_000);
        }

        @Override
        public Optional<String> cannotMeet(Lane lane) {
            double a = fromMount.millimetres();
            double b = fromWinder.millimetres();
            double line = lane.length().millimetres();
            if (a + b < line - READ_MM) {
                return Optional.of("two tapes of " + mm(a) + " and " + mm(b) + " cannot meet across a lane of "
                        + mm(line) + "; together they must reach at least that far");
            }
            if (Math.abs(a - b) > line + READ_MM) {
                return Optional.of("two tapes of " + mm(a) + " and " + mm(b) + " cannot meet: the ends are only "
                        + mm(line) + " apart; they may differ by at most that");
            }
            return Optional.empty();
        }

        @Override
        public Spot on(Lane lane) {
            cannotMeet(lane).ifPresent(why -> {
                throw new IllegalArgumentException(why);
            });
            double a = fromMount.millimetres();
            double b = fromWinder.millimetres();
            double line = lane.length().millimetres();
            double along = (a * a - b * b + line * line) / (2 * line);
            double square = a * a - along * along;
            return new Spot(along, square <= 0 ? 0 : side.sign() * Math.sqrt(square));
        }

        private static String mm(double value) {
            return String.format(Locale.ROOT, "%.0f mm", value);
        }
    }
}
