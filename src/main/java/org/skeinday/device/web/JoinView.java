package org.skeinday.device.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.FormErrors;

/**
 * The join form.
 *
 * @param joined whether this device has joined already and only says who uses it now
 * @param network how tablets reach the laptop; null for a device that may not show it
 * @param links the whole join link by each address, to be typed or sent; empty for a device that may not show it
 * @param qrPath the join link as SVG path, empty for a device that may not show it
 */
public record JoinView(
        List<Person> crew,
        FormErrors form,
        boolean joined,
        List<String> links,
        String qrPath,
        int qrSide,
        @Nullable NetworkView network) {
    /** Somebody of the crew. */
    public record Person(String id, String name) {}

    public String qrBox() {
        return "0 0 " + qrSide + " " + qrSide;
    }
}
