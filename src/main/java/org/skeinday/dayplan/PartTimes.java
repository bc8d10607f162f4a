package org.skeinday.dayplan;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Estimate;
import org.skeinday.attempt.Part;

/** How long the parts of an attempt take and between which times they lie, in seconds since the plan's zero. */
final class PartTimes {
    private final Map<Part, Estimate> estimates;
    private final EventSetting setting;
    private final long now;

    /** @param estimates the part's default where one is missing */
    PartTimes(Map<Part, Estimate> estimates, EventSetting setting, long now) {
        this.estimates = estimates;
        this.setting = setting;
        this.now = now;
    }

    /** What ran takes what it took; what runs takes as long as planned, or longer where it already has. */
    long seconds(AttemptAhead attempt, Part part) {
        Estimate estimate = estimates.getOrDefault(part, Estimate.of(part, List.of()));
        long planned = setting.careful() ? estimate.careful() : estimate.median();
        AttemptAhead.Begun begun = attempt.begun(part);
        if (begun == null) {
            return part == Part.PREPARE ? planned + attempt.benchSeconds() : planned;
        }
        return begun.end() == null ? Math.max(planned, now - begun.start()) : begun.end() - begun.start();
    }

    /**
     * Winding begins inside the window, with a motor that may be wound; so does preparing begin inside it where the bench has
     * work left.
     */
    long earliest(AttemptAhead attempt, Part part) {
        Long opens = attempt.opens();
        boolean inside = part == Part.WIND || part == Part.PREPARE && attempt.benchSeconds() > 0;
        long motor = part == Part.WIND ? Math.max(now, attempt.motorFrom()) : now;
        return inside && opens != null ? Math.max(motor, opens) : motor;
    }

    /** Null where the window does not close, and for all parts but the flight. */
    @Nullable
    Long latestEnd(AttemptAhead attempt, Part part, long seconds) {
        Long closes = attempt.closes();
        if (part != Part.FLY || closes == null) {
            return null;
        }
        long inside = setting.startInside() ? closes + seconds : closes;
        return attempt.begun().isEmpty() ? (Long) inside : (Long) Math.max(inside, soonestLanding(attempt));
    }

    /** What is under way is flown as soon as it can be: that it comes late is a fact and no reason to have no plan. */
    private long soonestLanding(AttemptAhead attempt) {
        long at = now;
        for (Part part : Part.values()) {
            AttemptAhead.Begun begun = attempt.begun(part);
            if (begun == null) {
                at += seconds(attempt, part);
            } else if (begun.end() == null) {
                at = Math.max(at, begun.start() + seconds(attempt, part));
            }
            if (part == Part.FLY) {
                break;
            }
        }
        return at;
    }
}
