package org.skeinday.steps;

/**
 * One row of {@code checklists.csv}: an item with the list that it belongs to, in words as the file has them. The cells of
 * the list are the same on each of its rows.
 *
 * @param aloud, critical yes or no
 */
public record ChecklistRow(
        String list,
        int revision,
        String title,
        String moment,
        String way,
        boolean aloud,
        String next,
        String item,
        String text,
        String reason,
        boolean critical,
        String answer) {
    Step step() {
        return new Step(item, text, reason, critical, ItemAnswer.ofWord(answer));
    }

    /** Whether both speak of the same list in the same words. */
    boolean agreesWith(ChecklistRow other) {
        return list.equals(other.list)
                && revision == other.revision
                && title.equals(other.title)
                && moment.equals(other.moment)
                && way.equals(other.way)
                && aloud == other.aloud
                && next.equals(other.next);
    }
}
