package org.skeinday.contest;

import java.util.List;

/**
 * Fact {@code crew.added}: what a person may do. The name is no part of it: names are kept beside the record.
 *
 * @param eventId the event it holds for, empty for all
 * @param roles comma-separated words of {@link #ROLES}, in that order
 */
public record CrewAdded(String personId, String eventId, String roles) {
    public static final List<String> ROLES = List.of("winds", "reads", "loads", "times", "releases");

    public CrewAdded {
        for (String role : roles.isEmpty() ? List.<String>of() : List.of(roles.split(",", -1))) {
            Must.beOneOf("A task", role, ROLES);
        }
    }

    /** Whether the person does this task. */
    public boolean does(String role) {
        return List.of(roles.split(",", -1)).contains(role);
    }
}
