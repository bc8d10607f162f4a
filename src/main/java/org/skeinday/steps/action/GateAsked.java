package org.skeinday.steps.action;

import org.skeinday.platform.db.Tx;
import org.skeinday.steps.Gate;
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
}
