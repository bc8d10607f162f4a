package org.skeinday.steps.action;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.Gate;
import org.skeinday.steps.GatePassed;
import org.skeinday.steps.Moment;
import org.skeinday.steps.store.PlaceLists;
import org.skeinday.steps.store.RunStore;

/** Whether winding may start. */
public final class GateAsked {
    private GateAsked() {}

    /**
     * What is to be wound, and where.
     *
     * @param event of the attempt
     * @param station winding place of the attempt; null where none is prepared
     */
    public record Wind(
            String event, String attempt, @Nullable String station) {
        String placeList() {
            return PlaceLists.subject(event, station);
        }
    }

    public static Gate.Verdict startWinding(Tx tx, Wind wind) {
        return Gate.startWinding(
                RunStore.of(tx, Moment.WINDING_PLACE, wind.placeList()),
                RunStore.of(tx, Moment.BEFORE_WINDING, wind.attempt()),
                passes(tx, wind));
    }

    /** Those of its place: whoever answered for what was open at another has not seen this one. */
    static List<GatePassed> passes(Tx tx, Wind wind) {
        return of(RunStore.passes(tx, wind.attempt()), wind.station());
    }

    private static List<GatePassed> of(List<GatePassed> passes, @Nullable String station) {
        return passes.stream().filter(pass -> pass.isOf(station)).toList();
    }

    /**
     * Who answered for what was open when a wind was begun.
     *
     * @param untilMs when it was begun, epoch ms; any later moment for one that is still to come
     */
    public static List<Gate.Answered> answered(Tx tx, Wind wind, List<GatePassed> passes, long untilMs) {
        return passes.isEmpty()
                ? List.of()
                : Gate.answered(
                        RunStore.asOf(tx, Moment.WINDING_PLACE, wind.placeList(), untilMs),
                        RunStore.asOf(tx, Moment.BEFORE_WINDING, wind.attempt(), untilMs),
                        of(passes, wind.station()));
    }
}
