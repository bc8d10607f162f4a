package org.skeinday.contest;

import org.jspecify.annotations.Nullable;
import org.skeinday.motor.Direction;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code model.added}.
 *
 * @param direction cw or acw: how its motor is wound, seen from the winder
 * @param hookDistanceMm between the hooks, as typed in {@code hookDistanceTyped}
 * @param massG without the motor, as typed in {@code massTyped}
 * @param motors one or two of them on the model; null, as in older records, is one
 */
public record ModelAdded(
        String id,
        String name,
        String team,
        String direction,
        double hookDistanceMm,
        String hookDistanceTyped,
        @Nullable Double massG,
        @Nullable String massTyped,
        @Nullable Integer motors) {
    public ModelAdded {
        Preconditions.filled("The model's name", name);
        Preconditions.oneOf("The direction", direction, Direction.WORDS);
        Preconditions.within("The number of motors", motors == null ? 1 : motors, 1, 2);
        Preconditions.within("The hook distance in mm", hookDistanceMm, 20, 2000);
    }

    public Direction turns() {
        return Direction.of(direction);
    }

    /** The same, weighed without its motor. @param typed with its unit */
    public ModelAdded weighed(double grams, String typed) {
        return new ModelAdded(id, name, team, direction, hookDistanceMm, hookDistanceTyped, grams, typed, motors);
    }
}
