package org.skeinday.device.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.FormErrors;

/**
 * The devices that may do something.
 *
 * @param atLaptop whether this is looked at on the laptop itself, where it is lent and taken back
 * @param lent whether the students hold it
 * @param codes what lets devices in; null for who is not the coach
 */
public record DevicesView(
        List<Row> rows,
        AskingView asking,
        boolean atLaptop,
        boolean lent,
        FormErrors form,
        @Nullable Codes codes) {
    /** Whether who ends a device may make new codes with it. */
    public boolean mayRenew() {
        return codes != null;
    }

    /** One device, in finished words. @param here whether a page of it is open and in sight */
    public record Row(String id, String who, String role, String joined, boolean here) {}

    /** Codes in two groups, as they are read aloud. @param ofDay empty when none was handed out today */
    public record Codes(String typed, String ofDay) {}
}
