package org.skeinday.paper.web;

import java.util.List;

/** What a captain brings to the officials, in finished words. */
public record DisputeView(String title, String event, List<Line> lines, List<Line> watches) {
    /** Label and value. */
    public record Line(String label, String value) {}
}
