package org.skeinday.device.web;

import java.util.List;

/** The devices that may do something. */
public record DevicesView(List<Row> rows) {
    /** One device, in finished words. @param here whether a page of it is open and in sight */
    public record Row(String id, String who, String role, String joined, boolean here) {}
}
