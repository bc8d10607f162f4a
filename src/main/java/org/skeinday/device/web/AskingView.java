package org.skeinday.device.web;

import java.util.List;

/**
 * The devices that wait for the coach's yes.
 *
 * @param mayAnswer whether who looks at this is the coach
 */
public record AskingView(List<Row> rows, boolean mayAnswer) {
    /** One of them. @param role that it asks for @param person id of who holds it, empty for nobody */
    public record Row(String id, String who, String role, String person) {}
}
