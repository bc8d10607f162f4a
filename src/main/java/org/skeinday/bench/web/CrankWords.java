package org.skeinday.bench.web;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.WinderOutput;
import org.skeinday.motor.Direction;

/**
 * Which way to turn the crank, so that the hook turns as it must.
 *
 * @param hook seen from the winder
 * @param station at work, null where none is prepared
 * @param nameOf display name of a person's id
 */
record CrankWords(Direction hook, @Nullable StationAdded station, UnaryOperator<String> nameOf) {
    WindingView.Crank view() {
        return station == null
                ? WindingView.Crank.NOTHING
                : station.output()
                        .map(output -> known(station, output))
                        .orElseGet(() -> new WindingView.Crank("", "", station.id()));
    }

    private WindingView.Crank known(StationAdded at, WinderOutput output) {
        String turn = "turn the crank " + output.crankFor(hook).words() + ": the hook turns " + hook.words();
        return new WindingView.Crank(
                turn, output.word() + " its crank, one marked turn " + at.outputChecked() + by(at), at.id());
    }

    private String by(StationAdded at) {
        return Optional.ofNullable(at.outputCheckedBy())
                .map(nameOf)
                .map(name -> ", " + name)
                .orElse("");
    }
}
