package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.skeinday.units.Preconditions;

/**
 * Fact {@code result.final}: the chief has made a version of an event's result final, as these lines show it.
 *
 * @param version from 1
 * @param atMs when, epoch ms
 * @param lines rules and entries as they stood then
 */
public record ResultFinal(String eventId, int version, String personId, String device, long atMs, List<Line> lines) {
    /** As long as a line may be; what is longer is compared by its beginning. */
    public static final int LONGEST = 2_000;

    /** @param about id of an entry, or of what else the line is about @param shown in words */
    public record Line(String about, String shown) {
        public Line {
            shown = shown.length() <= LONGEST ? shown : shown.substring(0, LONGEST);
        }
    }

    /** What a line said and what it says now; empty for a line that was not there, or is not any more. */
    public record Change(String was, String now) {
        /** In words. */
        public String words() {
            return was.isEmpty() ? "new: " + now : now.isEmpty() ? "gone: " + was : "was " + was + "; now " + now;
        }
    }

    public ResultFinal {
        Preconditions.atLeast("A version", version, 1);
        lines = List.copyOf(lines);
    }

    /** What has changed since, in the order of the result as it is now. */
    public List<Change> since(List<Line> now) {
        Map<String, String> were = new LinkedHashMap<>();
        lines.forEach(line -> were.put(line.about(), line.shown()));
        List<Change> changes = new ArrayList<>();
        for (Line line : now) {
            String was = Objects.requireNonNullElse(were.remove(line.about()), "");
            if (!was.equals(line.shown())) {
                changes.add(new Change(was, line.shown()));
            }
        }
        were.values().forEach(gone -> changes.add(new Change(gone, "")));
        return List.copyOf(changes);
    }
}
