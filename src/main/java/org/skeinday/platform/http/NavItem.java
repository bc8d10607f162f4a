package org.skeinday.platform.http;

/**
 * A word in the bar, where it leads, and to whom it is shown.
 *
 * @param minimum from which role on, {@code most} up to which one
 */
public record NavItem(String word, String path, Role minimum, Role most) {
    /** Shown to everybody from a role on. */
    public NavItem(String word, String path, Role minimum) {
        this(word, path, minimum, Role.COACH);
    }

    boolean isFor(Role role) {
        return role.covers(minimum) && most.covers(role);
    }
}
