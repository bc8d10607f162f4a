package org.skeinday.attempt.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.Cautions;

/**
 * The captain's page in finished words.
 *
 * @param form what was typed into the last form and why it was refused, by field; under "" what belongs to no field
 * @param card the next attempt, null when none is left
 * @param closed the attempt that was closed last, while no other is under way; null for none
 * @param none why there is no card, empty when there is one
 * @param protests announced times that can still be protested
 * @param slipped what the plan of the day no longer keeps; empty while it holds or where there is none
 * @param again epoch ms at which the page is to be looked at again, since time passes for a plan; 0 for no such moment
 */
public record NowView(
        String event,
        String rules,
        FormErrors form,
        @Nullable Card card,
        @Nullable Choice closed,
        String none,
        List<EntryLine> entries,
        boolean mayAct,
        String otherUnits,
        List<Protest> protests,
        List<String> slipped,
        long again,
        List<Choice> events,
        @Nullable Choice todays) {

    public String wrong(String field) {
        return form.message(field);
    }

    /** Label and value. */
    public record Line(String label, String value) {}

    /** A motor to choose. */
    public record Choice(String id, String words) {}

    /** A button: a form that sends one act. */
    public record Deed(String address, String word, String to) {}

    /**
     * A motor's plan.
     *
     * @param walkIn crank turns and where to stand then
     */
    public record Plan(List<Line> lines, List<Line> walkIn, List<String> warnings) {}

    /**
     * The next attempt.
     *
     * @param until epoch ms that the clock counts down to, 0 for no clock
     * @param window of the entry, with its last call; the clock above may count down to something before its end
     * @param seen what this card shows of the attempt, for the server to see whether that still holds
     * @param quiet since when nobody may be helped, in words; empty when all may
     * @param judges watches of which the captain may say what holds; empty when not now
     * @param doubted whether the time is taken with a reason only
     * @param choose whether motors and fractions can be chosen for the attempts left
     * @param brief cautions of this moment, each one line that opens
     * @param waits what winding waits for, in words; empty when it need not
     * @param broke what to do now that the motor broke; empty while it did not
     * @param announces whether the time of officials elsewhere is typed in here
     */
    public record Card(
            String title,
            String state,
            String clockLabel,
            long until,
            WindowClock window,
            String entry,
            int number,
            String attempt,
            String seen,
            @Nullable Plan plan,
            List<Line> lines,
            List<String> cautions,
            List<Choice> models,
            List<Choice> motors,
            List<Deed> deeds,
            String quiet,
            boolean announces,
            List<Integer> judges,
            boolean doubted,
            boolean choose,
            String waits,
            String broke,
            List<Cautions.Shown> brief) {
        /** Whether giving up makes it void, and not scrubbed. */
        public boolean released() {
            return state.equals("in the air") || state.equals("landed");
        }

        /** Elsewhere the officials' time comes first: what is counted is what they said. */
        public boolean announceFirst() {
            return announces && lines.stream().noneMatch(line -> line.label().equals("announced"));
        }

        /** Whether something else comes before what can be done in this state: the checks, people, the officials. */
        public boolean waitsForMore() {
            return !waits.isEmpty() || !broke.isEmpty() || announceFirst();
        }

        public boolean isToCall() {
            return attempt.isEmpty();
        }
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
