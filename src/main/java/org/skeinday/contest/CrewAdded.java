package org.skeinday.contest;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code crew.added}: what a person may do. The name is no part of it: names are kept beside the record.
 *
 * @param eventId the event it holds for, empty for all
 * @param roles what the person is cleared for: comma-separated words of {@link #ROLES}, in that order
 * @param cleanWinds winds to plan without a fault so far, null when nobody counted
 * @param team of which this person is, whose entries they do not time when this laptop hosts; null where it plays no part
 */
public record CrewAdded(
        String personId,
        String eventId,
        String roles,
        @Nullable Integer cleanWinds,
        @Nullable String team) {
    public static final List<String> ROLES = List.of("winds", "reads", "loads", "times", "releases", "retrieves");

    public CrewAdded {
        for (String role : roles.isEmpty() ? List.<String>of() : List.of(roles.split(",", -1))) {
            Preconditions.oneOf("A task", role, ROLES);
        }
    }

    /** Clean winds before the lower ceiling may be used, and before the full one (common practice). */
    public static final int TO_LOWER_CEILING = 3;

    public static final int TO_FULL_CEILING = 5;

    /** How far this person may wind alone, in words; empty for one who does not wind or whose winds nobody counted. */
    public String mayWind() {
        if (!does("winds") || cleanWinds == null) {
            return "";
        }
        return cleanWinds < TO_LOWER_CEILING
                ? "with somebody beside"
                : cleanWinds < TO_FULL_CEILING ? "to the lower ceiling" : "to the full ceiling";
    }

    /** Whether the person does this task. */
    public boolean does(String role) {
        return List.of(roles.split(",", -1)).contains(role);
    }
}
