package org.skeinday.attempt;

import java.util.Optional;

/**
 * The hands rule as one person's own device meets it: from the first crank turn to the release whoever winds, loads or
 * releases has no key to press, on any page. Whoever is alone keeps the keys, so that nobody ever loses the last one; a device
 * that is nobody's own, as the laptop is, is never bound.
 *
 * @param task what the person does at the motor, as {@code winds}; empty while nothing binds them
 * @param alone whether nobody else is there who could tap
 */
public record FullHands(String task, boolean alone) {
    /** Of everybody whose hands are free. */
    public static final FullHands FREE = new FullHands("", false);

    public FullHands {
        if (alone && task.isEmpty()) {
            throw new IllegalArgumentException("Only hands that are on a motor can be alone, but no task was given");
        }
    }

    /**
     * @param task what the person of the device is named for at this motor; empty for nothing
     * @param reads whether the same person reads its meter as well
     * @param others whether anybody else, with free hands, has a device that could tap
     */
    public static FullHands of(LiveAttempt live, Optional<String> task, boolean reads, boolean others) {
        return task.isPresent() && binds(live) ? new FullHands(task.get(), reads || !others) : FREE;
    }

    /** From the first crank turn to the release; after a break and when turns are run back whoever is nearest tells. */
    public static boolean binds(LiveAttempt live) {
        return live.phase().name().isBeforeRelease() && live.phase().name() != AttemptPhase.Name.CALLED;
    }

    /** Whether this device has its keys. */
    public boolean hasKeys() {
        return task.isEmpty() || alone;
    }

    /** What is said of it, as a sentence; empty for free hands. */
    public String words() {
        if (task.isEmpty()) {
            return "";
        }
        return alone
                ? "You are alone at the motor: the keys stay here."
                : "You are the one who " + task + " it: until the release you have no key here.";
    }
}
