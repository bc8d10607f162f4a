package org.skeinday.device.web;

import java.util.List;

/** The devices that may do something. */
public record DevicesView(List<Row> rows) {
    /** One device, in finished words. */
    public record Row(String id, String who, String role, String joined) {}
}
