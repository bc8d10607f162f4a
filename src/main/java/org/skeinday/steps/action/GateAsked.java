package org.skeinday.steps.action;

import java.util.List;
import org.skeinday.platform.db.Tx;
import org.skeinday.steps.Gate;
import org.skeinday.steps.GatePassed;
import org.skeinday.steps.Moment;
import org.skeinday.steps.store.RunStore;

/** Whether winding may start. */
public final class GateAsked {
    private GateAsked() {}

    /**
     * @param day id of the event whose winding place it is
     * @param attempt that is to be wound
     */
    public static Gate.Verdict startWinding(Tx tx, String day, String attempt) {
        return Gate.startWinding(
                RunStore.of(tx, Moment.WINDING_PLACE, day),
                RunStore.of(tx, Moment.BEFORE_WINDING, attempt),
                RunStore.passes(tx, attempt));
    }

    /**
     * Who answered for what was open when a wind was begun.
     *
     * @param untilMs when it was begun, epoch ms; any later moment for one that is still to come
     */
    public static List<Gate.Answered> answered(
            Tx tx, String day, String attempt, List<GatePassed> passes, long untilMs) {
        return passes.isEmpty()
                ? List.of()
                : Gate.answered(
                        RunStore.asOf(tx, Moment.WINDING_PLACE, day, untilMs),
                        RunStore.asOf(tx, Moment.BEFORE_WINDING, attempt, untilMs),
                        passes);
    }
}
