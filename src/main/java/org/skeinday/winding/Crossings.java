package org.skeinday.winding;

import java.util.ArrayList;
import java.util.List;

/** Which taps count, and the levels that they make. */
final class Crossings {
    private Crossings() {}

    /**
     * A tap back within two seconds of the tap up before it, with no phase between, takes that one back: neither is a
     * reading. Needles fall fast once cranking stops, hence the phases.
     */
    static List<Crossing> of(List<WindMark> inOrder, List<WindPhase> phases) {
        List<WindMark> kept = new ArrayList<>();
        for (WindMark mark : inOrder) {
            if (mark.leftOut()) {
                continue;
            }
            if (!kept.isEmpty() && takesBack(mark, kept.get(kept.size() - 1), phases)) {
                kept.remove(kept.size() - 1);
            } else {
                kept.add(mark);
            }
        }
        return levels(kept);
    }

    private static boolean takesBack(WindMark mark, WindMark last, List<WindPhase> phases) {
        return mark.step() < 0
                && last.step() > 0
                && mark.elapsedMs() - last.elapsedMs() <= MarkDoubts.CORRECTION_MS
                && phases.stream().noneMatch(p -> between(p, last, mark));
    }

    private static boolean between(WindPhase phase, WindMark first, WindMark second) {
        return phase.elapsedMs() >= first.elapsedMs() && phase.elapsedMs() < second.elapsedMs();
    }

    private static List<Crossing> levels(List<WindMark> kept) {
        List<Crossing> crossings = new ArrayList<>();
        int level = 0;
        for (WindMark mark : kept) {
            int next = mark.levelAfter(level);
            crossings.add(new Crossing(mark, level, next));
            level = next;
        }
        return List.copyOf(crossings);
    }
}
