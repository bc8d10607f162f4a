package org.skeinday.platform.http;

/**
 * Who asks.
 *
 * @param device its id; "laptop" on the laptop itself
 * @param person id of the person who holds it, empty when nobody was chosen
 */
public record Caller(String device, String person, Role role) {
    public static final Caller LAPTOP = new Caller("laptop", "", Role.COACH);
    static final Caller NOBODY = new Caller("", "", Role.ANYONE);
}
