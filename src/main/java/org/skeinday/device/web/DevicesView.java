package org.skeinday.device.web;

import java.util.List;
import org.skeinday.platform.http.FormErrors;

/**
 * The devices that may do something.
 *
 * @param atLaptop whether this is looked at on the laptop itself, where it is lent and taken back
 * @param lent whether the students hold it
 */
public record DevicesView(List<Row> rows, boolean atLaptop, boolean lent, FormErrors form) {
    /** One device, in finished words. @param here whether a page of it is open and in sight */
    public record Row(String id, String who, String role, String joined, boolean here) {}
}
