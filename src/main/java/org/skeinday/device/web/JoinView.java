package org.skeinday.device.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.FormErrors;

/**
 * The join form.
 *
 * @param joined whether this device has joined already and only says who uses it now
 * @param waiting what it asks the coach for; null for a device that has not joined
 * @param invitation what others join by; null for a device that may not show it
 * @param asking who waits for the coach's yes; null where the invitation is
 */
public record JoinView(
        List<Person> crew,
        FormErrors form,
        boolean joined,
        @Nullable WaitingView waiting,
        @Nullable InvitationView invitation,
        @Nullable AskingView asking) {
    /** What is typed as code, for whom. */
    public String hint() {
        return joined
                ? "To become timekeeper or captain; without it the coach says yes on the laptop."
                : form.typed("token").isEmpty()
                        ? "Six letters and digits, from the laptop's page Join or from the coach."
                        : "Scanned: nothing to type. Timekeeper or captain: the coach's code for today, or the coach says"
                                + " yes on the laptop.";
    }

    /** Somebody of the crew. */
    public record Person(String id, String name) {}
}
