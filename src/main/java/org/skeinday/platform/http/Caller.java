package org.skeinday.platform.http;

/**
 * Who is asking.
 *
 * @param device id of the device, {@code laptop} for the laptop itself
 * @param person id of the person, or the name they typed; empty when nobody was chosen
 * @param onLaptop whether the request came from the machine that runs the server
 */
public record Caller(String device, String person, Role role, boolean onLaptop) {
    /** The laptop's own id as a device. */
    public static final String LAPTOP = "laptop";

    public Caller {
        if (device.isBlank()) {
            throw new IllegalArgumentException("A caller must have a device id, but had none");
        }
    }

    /** The laptop itself: its owner is never locked out. */
    public static Caller laptop() {
        return new Caller(LAPTOP, "", Role.COACH, true);
    }

    /** The laptop in the students' hands: what a coach does there needs the PIN. */
    public static Caller lentLaptop() {
        return new Caller(LAPTOP, "", Role.CAPTAIN, true);
    }

    /** Whether it has joined nothing and only looks on. */
    public boolean isSpectator() {
        return role == Role.SPECTATOR;
    }

    public boolean isLaptop() {
        return device.equals(LAPTOP);
    }
}
