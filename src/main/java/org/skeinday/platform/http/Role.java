package org.skeinday.platform.http;

import java.util.Locale;

/** What a device may do; each role may do what those before it may. */
public enum Role {
    /** No device at all: the join page and what it needs. */
    ANYONE,
    VIEWER,
    HELPER,
    TIMEKEEPER,
    CAPTAIN,
    COACH;

    public boolean covers(Role needed) {
        return compareTo(needed) >= 0;
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The role of this name, as a form or a record writes it.
     *
     * @throws IllegalArgumentException naming the roles that a device can have
     */
    public static Role of(String word) {
        for (Role role : values()) {
            if (role != ANYONE && role.word().equals(word)) {
                return role;
            }
        }
        throw new IllegalArgumentException(
                "A role must be viewer, helper, timekeeper, captain or coach, but was '" + word + "'");
    }
}
