package org.skeinday.attempt.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.FullHands;
import org.skeinday.platform.http.FormErrors;

/**
 * The captain's page in finished words.
 *
 * @param form what was typed into the last form and why it was refused, by field; under "" what belongs to no field
 * @param card the next attempt, null when none is left
 * @param others cards of attempts that are under way beside it: of each the phase and the one key that is due
 * @param closed the attempt that was closed last, while no other is under way; null for none
 * @param none why there is no card, empty when there is one
 * @param protests announced times that can still be protested
 * @param mayAct whether the captain looks, with free hands
 * @param hands of the captain who looks, on the own device; free for everybody else
 * @param plan what the plan of the day says; nothing where there is none
 * @param watches as many as the event's rules ask for
 * @param again epoch ms at which the page is to be looked at again, since time passes for a plan; 0 for no such moment
 */
public record NowView(
        String event,
        String rules,
        FormErrors form,
        @Nullable NowCard card,
        List<NowCard> others,
        @Nullable Choice closed,
        String none,
        List<EntryLine> entries,
        boolean mayAct,
        FullHands hands,
        String otherUnits,
        List<Protest> protests,
        PlanBeside.Said plan,
        long again,
        List<Choice> events,
        @Nullable Choice todays,
        int watches) {

    public String wrong(String field) {
        return form.message(field);
    }

    /** What stands above the page: what belongs to no field, and to none that is in sight. */
    public String wrongAbove() {
        return wrong("") + wrong("entry") + (isAboutTheCall() ? "" : wrong("model") + wrong("motor"));
    }

    /** Whether the form that was refused is the one that calls the entry of the card. */
    public boolean isAboutTheCall() {
        return card != null && card.isToCall() && card.live().entryId().equals(form.typed("entry"));
    }

    /** Label and value. */
    public record Line(String label, String value) {}

    /** One of several things to choose. @param meant whether the plan means it for another entry, as its words say */
    public record Choice(String id, String words, boolean meant) {
        public Choice(String id, String words) {
            this(id, words, false);
        }
    }

    /** A task of an attempt. @param person id of who is named for it, empty for nobody @param people who are cleared for it */
    public record Hand(String task, String person, List<Choice> people) {}

    /** A button: a form that sends one act. */
    public record Deed(String address, String word, String to) {}

    /**
     * A motor's plan.
     *
     * @param walkIn crank turns and where to stand then
     */
    public record Plan(List<Line> lines, List<Line> walkIn, List<String> warnings) {
        /** Of no motor. */
        static final Plan NONE = new Plan(List.of(), List.of(), List.of());
    }

    /**
     * An announced time beside our own watches.
     *
     * @param until epoch ms of the deadline, 0 when the terms set none
     */
    public record Protest(String attempt, String title, String words, long until) {}

    /** One entry's day so far. @param open id of its attempt that is under way, empty for none */
    public record EntryLine(
            String name,
            String team,
            String window,
            String attempts,
            String state,
            String entry,
            int number,
            boolean callable,
            String open) {}
}
