package org.skeinday.steps.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.Cautions;

/**
 * The page Checks in finished words.
 *
 * @param day name of the event; empty when there is none
 * @param none what is said in place of a list; empty when there is one
 * @param notices what the state of the attempt makes worth saying above the list
 * @param refetch address of the part
 * @param waits what winding waits for
 * @param attempt id of the attempt that waits
 * @param title of the attempt that is under way; empty where none is
 * @param strip of the same; no step where none is
 * @param today ISO date in the hall, for cautions
 */
public record ChecksView(
        String day,
        String none,
        @Nullable Ended ended,
        List<Notice> notices,
        @Nullable Walk walk,
        List<Other> others,
        List<Cautions.Shown> cautions,
        String today,
        String refetch,
        GateView waits,
        String attempt,
        String title,
        StripView strip,
        boolean coach,
        FormErrors form) {
    /** Whether the strip is of another attempt than the list, or of one where the list is the day's: then it is named. */
    public boolean namesItsAttempt() {
        return !title.isEmpty() && (walk == null || !walk.about().equals(title));
    }

    /**
     * The list that is walked through.
     *
     * @param about what it is for; empty for the day
     * @param way read, then do; or do, then confirm
     * @param resumed where it stopped and how long ago; empty when it was not interrupted
     * @param ending what comes next; empty while something is open
     * @param aloud whether one tap answers all of it
     */
    public record Walk(
            String list,
            String subject,
            int revision,
            String title,
            String about,
            String way,
            String resumed,
            String ending,
            boolean aloud,
            List<Item> items) {
        Walk ending(String words) {
            return new Walk(list, subject, revision, title, about, way, resumed, words, aloud, items);
        }
    }

    /** @param address where the link leads, empty for none */
    public record Notice(String words, String address, String link) {}

    /**
     * One item.
     *
     * @param state open, done or skipped
     * @param asks how it is answered: ok, text, direction, place or hall (not to be ticked: it is mended there)
     * @param unit what a typed value is, for its label
     * @param under in which unit a bare number is taken, as it is sent with it; empty for what has none
     * @param said who answered, when and what; each line one fact that holds
     * @param notes why it is asked again, what is in doubt
     * @param offers what one tap answers: value and words
     * @param about id of the latest tap that holds, empty when there is none
     * @param undoUntil epoch ms until which it can be undone
     */
    public record Item(
            String step,
            String text,
            String reason,
            boolean critical,
            String state,
            String asks,
            String unit,
            String under,
            List<String> said,
            List<String> notes,
            List<Offer> offers,
            String about,
            long undoUntil) {
        public boolean isOpen() {
            return state.equals("open");
        }
    }

    /** A list that was done to its end just now. @param words its title and what comes next */
    public record Ended(String words, String address) {}

    public record Offer(String answer, String words) {}

    /** @param state how far it is, in words */
    public record Other(String address, String title, String state, String look) {}
}
