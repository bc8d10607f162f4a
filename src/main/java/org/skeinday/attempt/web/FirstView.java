package org.skeinday.attempt.web;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BreakPlace;
import org.skeinday.platform.http.FormErrors;

/**
 * What comes before anything else, on every page of every device: people after a break, turns that are still on.
 *
 * @param items empty while there is nothing
 * @param mayTell whether this device may answer
 * @param mayStop whether this device may stop the hall
 * @param stop null while the hall goes on
 * @param about the attempt, or the motor alone, that the form was about; empty for none
 */
public record FirstView(
        List<Item> items,
        boolean mayTell,
        boolean mayStop,
        FormErrors form,
        String about,
        @Nullable Stop stop) {
    /**
     * The hall stands still.
     *
     * @param why in words
     * @param since epoch ms
     * @param mayResume whether this device may say that it goes on
     */
    public record Stop(String id, String why, long since, boolean mayResume) {}

    /** What is asked. */
    public enum Ask {
        PEOPLE_SAFE,
        WHERE,
        RUN_BACK
    }

    /**
     * One question.
     *
     * @param attempt empty for a motor that no attempt has in hand, or has no longer
     * @param title entry, attempt and motor
     * @param onlyCranked whether the bench has no key that says it was run back: it never heard that turns are on
     * @param changed whether its attempt took another motor instead: then somebody has just wound it, and says what was on
     */
    public record Item(Ask ask, String attempt, String motor, String title, boolean onlyCranked, boolean changed) {
        /** Of this form among those of several. */
        public String field(String name) {
            return name + "-" + about();
        }

        public boolean isAlone() {
            return attempt.isEmpty();
        }

        /** What its form is about: the attempt, or the motor alone. */
        String about() {
            return isAlone() ? motor : attempt;
        }
    }

    /** Where it may have parted; a fall is the coach's to say. */
    public List<BreakPlace> places() {
        return Arrays.stream(BreakPlace.values())
                .filter(place -> place != BreakPlace.DROPPED)
                .toList();
    }

    /** What is wrong with a form that no item here asks for, or with none of its fields. */
    public String wrong() {
        boolean beside = items.stream().anyMatch(this::shows);
        return form.message("") + (beside ? "" : form.message("turns") + form.message("place"));
    }

    /** Whether turns of a motor are asked about that nothing here asks for: they were told on another page. */
    public boolean asksAlone() {
        return !form.message("insist").isEmpty()
                && !form.message("turns").isEmpty()
                && items.stream().noneMatch(this::shows);
    }

    /** Whether its own form has the field that is wrong. */
    private boolean shows(Item item) {
        return item.about().equals(about)
                && (item.ask() == Ask.RUN_BACK && !form.message("turns").isEmpty()
                        || item.ask() == Ask.WHERE && !form.message("place").isEmpty());
    }

    public String wrong(Item item, String field) {
        return about.equals(item.about()) ? form.message(field) : "";
    }

    public String typed(Item item, String field) {
        return about.equals(item.about()) ? form.typed(field) : "";
    }
}
