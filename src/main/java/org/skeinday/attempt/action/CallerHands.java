package org.skeinday.attempt.action;

import org.skeinday.attempt.Hands;
import org.skeinday.device.Device;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;

/** Whose hands the device stands for that an act came from: a refusal says what its own caller can do, not what others can. */
final class CallerHands {
    private static final String LAPTOP = "laptop";

    private CallerHands() {}

    /** Of the laptop the captain's, lent or not; of a device that has left nobody's. */
    static Hands of(Tx tx, ActContext context) {
        return context.device().equals(LAPTOP)
                ? Hands.CAPTAIN
                : DeviceStore.ofId(tx, context.device())
                        .map(Device::role)
                        .map(CallerHands::ofRole)
                        .orElse(Hands.NONE);
    }

    /** A helper may have the reader's keys, on the page Winding. */
    static Hands ofRole(String role) {
        return switch (role) {
            case "coach", "captain" -> Hands.CAPTAIN;
            case "timekeeper" -> Hands.TIMEKEEPER;
            case "helper" -> Hands.READER;
            default -> Hands.NONE;
        };
    }
}
