package org.skeinday.audit.web;

import java.util.List;

/**
 * What was changed, in finished words, the latest first.
 *
 * @param finding how much there is, of what
 * @param topics to look at one of them
 * @param query what the address has after its path
 * @param earlier the address of the page with what was before; empty where there is none
 * @param later the same of what came after
 */
public record AuditView(
        String finding, List<Topic> topics, List<Line> lines, String query, String earlier, String later) {
    /** A kind of change, or all. */
    public record Topic(String name, String path, boolean isShown) {}

    /**
     * One change.
     *
     * @param when with its day where that is not the one of the line above
     * @param path where what was changed can be looked at; empty for nowhere
     * @param reason empty where none was said
     */
    public record Line(
            String day,
            String when,
            String who,
            String about,
            String path,
            String words,
            List<Change> changes,
            String reason) {}

    /** @param before, after a dash for nothing */
    public record Change(String label, String before, String after) {}
}
