package org.skeinday.steps;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.skeinday.units.Preconditions;

/**
 * A list of one moment, in one revision. Rules of lists that work: few items, critical ones first, short, a line at the end
 * that says what comes next (Degani and Wiener, NASA CR-177549; A. Gawande's checklist for checklists).
 *
 * @param revision 1 for the first
 * @param aloud read aloud by one, then one tap for all of it
 * @param next said when all is done: what comes next
 * @param steps 1 to {@link #MOST}, critical ones first
 */
public record Checklist(
        String id, int revision, String title, Moment moment, Way way, boolean aloud, String next, List<Step> steps) {
    /** Nine are brought along before winding, and a coach's own have a place beside them. */
    public static final int MOST = 12;

    public Checklist {
        steps = List.copyOf(steps);
        Preconditions.filled("A list's id", id);
        Preconditions.within("A list's revision", revision, 1, 9999);
        Preconditions.filled("A list's title", title);
        Preconditions.filled("The line that says what comes next", next);
        Preconditions.within("The number of items of '" + title + "'", steps.size(), 1, MOST);
        beOnce(title, steps);
        beCriticalFirst(title, steps);
        if (aloud && steps.stream().anyMatch(s -> s.answer().isValue())) {
            throw new IllegalArgumentException(
                    "'" + title
                            + "' is read aloud and tapped once, so its items must be answered with OK, but one asks for a value");
        }
        serveTheGate(title, moment, steps);
    }

    private static void beOnce(String title, List<Step> steps) {
        Set<String> ids = new HashSet<>();
        for (Step step : steps) {
            if (!ids.add(step.id())) {
                throw new IllegalArgumentException(
                        "Each item of '" + title + "' must stand once, but '" + step.id() + "' stands twice");
            }
        }
    }

    private static void beCriticalFirst(String title, List<Step> steps) {
        for (int i = 1; i < steps.size(); i++) {
            if (steps.get(i).critical() && !steps.get(i - 1).critical()) {
                throw new IllegalArgumentException("Critical items of '" + title + "' must come first, but '"
                        + steps.get(i).text() + "' comes after '"
                        + steps.get(i - 1).text() + "'");
            }
        }
    }

    /** Start winding waits for these two lists: they may be worded anew, but not emptied of what it waits for. */
    private static void serveTheGate(String title, Moment moment, List<Step> steps) {
        if (moment == Moment.WINDING_PLACE && steps.stream().noneMatch(Step::critical)) {
            throw new IllegalArgumentException("'" + title + "' must keep at least one critical item, but has none");
        }
        if (moment == Moment.BEFORE_WINDING
                && steps.stream().noneMatch(s -> s.critical() && s.id().equals(Step.EYES))) {
            throw new IllegalArgumentException(
                    "'" + title + "' must ask for eye protection as a critical item, but does not");
        }
    }

    public Optional<Step> step(String stepId) {
        return steps.stream().filter(s -> s.id().equals(stepId)).findFirst();
    }

    public List<Step> critical() {
        return steps.stream().filter(Step::critical).toList();
    }
}
