package org.skeinday.contest;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Fact {@code model.added}.
 *
 * @param direction cw or acw: how its motor is wound, seen from the winder
 * @param hookDistanceMm between the hooks, as typed in {@code hookDistanceTyped}
 * @param massG without the motor, as typed in {@code massTyped}
 */
public record ModelAdded(
        String id,
        String name,
        String team,
        String direction,
        double hookDistanceMm,
        String hookDistanceTyped,
        @Nullable Double massG,
        @Nullable String massTyped) {
    public static final List<String> DIRECTIONS = List.of("cw", "acw");

    public ModelAdded {
        Must.beNamed("The model's name", name);
        Must.beOneOf("The direction", direction, DIRECTIONS);
        Must.beWithin("The hook distance in mm", hookDistanceMm, 20, 2000);
    }
}
