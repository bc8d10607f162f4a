package org.skeinday.platform.http;

import java.util.Locale;

/** What a device may do; each role covers those before it. */
public enum Role {
    /** Of no crew, in by the spectators' address: the wall, the result sheet and the order, and nothing else. */
    SPECTATOR,
    VIEWER,
    HELPER,
    TIMEKEEPER,
    CAPTAIN,
    COACH;

    public boolean covers(Role other) {
        return compareTo(other) >= 0;
    }

    /** The role as people say it: {@code helper}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Reads {@link #word}; refuses anything else. */
    public static Role ofWord(String word) {
        for (Role role : values()) {
            if (role.word().equals(word)) {
                return role;
            }
        }
        throw new IllegalArgumentException(
                "A role must be spectator, viewer, helper, timekeeper, captain or coach, but was '" + word + "'");
    }
}
