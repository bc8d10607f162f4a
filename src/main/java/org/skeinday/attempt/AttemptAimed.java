package org.skeinday.attempt;

/** Fact {@code attempt.aimed}: the launch torque that is wanted, above 0 N·mm, as typed in {@code launchTyped}. */
public record AttemptAimed(String attemptId, double launchNmm, String launchTyped) {
    public AttemptAimed {
        if (!(launchNmm > 0 && launchNmm < 10_000)) {
            throw new IllegalArgumentException(
                    "The launch torque wanted must be above 0 and below 10000 N·mm, but was " + launchNmm);
        }
    }
}
