package org.skeinday.bench.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is told of an attempt once it is released, in finished words.
 *
 * @param unread the wind in three numbers, null when the needle was read
 * @param landing what is left and whether the flight says something, null while it is in the air
 * @param suggests what the turns left suggest, empty when they say nothing
 */
public record FlightView(
        String attempt,
        @Nullable Unread unread,
        @Nullable Landing landing,
        List<BenchView.Line> figures,
        String suggests) {
    /** @param unit in which torques are typed, {@code shown} as it stands in labels */
    public record Unread(
            String stop, String backOff, String peak, String launch, String unit, String shown, boolean told) {}

    /**
     * After the landing.
     *
     * @param remaining crank turns
     * @param spoilt why the flight says nothing of model and motor; empty when it does
     * @param contact time since the release
     * @param undecided what it touched, empty unless somebody has still to say what that means
     * @param seen how it is judged now, so that two who judge at once hear of each other
     */
    public record Landing(
            String remaining, String spoilt, String contact, boolean told, String undecided, String seen) {}
}
