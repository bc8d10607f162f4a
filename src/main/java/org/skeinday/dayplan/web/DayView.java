package org.skeinday.dayplan.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.web.NextMotors;
import org.skeinday.attempt.web.OpenAttempt;

/**
 * The day's plan in finished words.
 *
 * @param none why there is no plan to show; empty when there is one
 * @param slipped what the plan in force no longer keeps; empty while it holds
 * @param own what the reader's person does, in order
 * @param choices what a change may be tried on
 * @param setbacks what keeps people or models away now
 * @param handIn whether motors are ready by when they are handed in
 * @param tellable what of that may be told; empty for who may not
 * @param isQuiet whether no plan is proposed, since outside help is not allowed just now
 */
public record DayView(
        String title,
        String none,
        String taken,
        List<String> slipped,
        @Nullable Bands bands,
        List<Row> rows,
        List<Own> own,
        List<String> holdsUp,
        List<Choice> choices,
        List<Going> setbacks,
        List<Choice> tellable,
        HandIn handIn,
        String event,
        boolean mayAct,
        boolean isQuiet,
        Attempts attempts) {
    /** Where those stand that are under way, and with which motors own entries fly them and those that come next. */
    public record Attempts(List<OpenAttempt> underWay, List<NextMotors> motors) {
        static final Attempts NONE = new Attempts(List.of(), List.of());
    }

    /** Nothing but why. */
    static DayView none(String title, String why) {
        return new DayView(
                title,
                why,
                "",
                List.of(),
                null,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                HandIn.NONE,
                "",
                false,
                false,
                Attempts.NONE);
    }

    /** Without advice: the plan as it was taken, who does what, and no more. */
    DayView quiet() {
        return new DayView(
                title,
                none,
                taken,
                List.of(),
                bands,
                rows,
                own,
                List.of(),
                List.of(),
                setbacks,
                tellable,
                HandIn.NONE,
                event,
                mayAct,
                true,
                attempts);
    }

    /** The same with where the attempts stand. */
    DayView with(Attempts attempts) {
        return new DayView(
                title, none, taken, slipped, bands, rows, own, holdsUp, choices, setbacks, tellable, handIn, event,
                mayAct, isQuiet, attempts);
    }

    /** @param title empty where nothing is handed in @param lines one for each motor */
    public record HandIn(String title, List<String> lines) {
        static final HandIn NONE = new HandIn("", List.of());
    }

    /** The whole page. @param asks whether a proposal is asked for with it */
    public record Opened(DayView day, boolean asks) {}

    /** Something that keeps a person or a model away. @param over the word that ends it */
    public record Going(String id, String words, String over) {}

    /** One task of the table. @param inHand minutes, empty where no window follows @param is waiting, now, done or late */
    public record Row(String time, String task, String people, String motor, String latest, String inHand, String is) {}

    /** One thing that the reader's person does. */
    public record Own(String time, String task, String motor) {}

    /** What may be changed, for a select. */
    public record Choice(String value, String words) {}

    /**
     * A plan that was proposed.
     *
     * @param id by which it is taken
     * @param supposing the change that was tried; empty for the day as it is
     * @param because what has happened since the plan in force was taken
     * @param moved what it changes; empty when the plan in force stays
     * @param unfit attempts that do not fit
     */
    public record Proposal(
            String id,
            String supposing,
            String words,
            List<String> because,
            List<String> moved,
            List<String> unfit,
            List<String> conflict,
            List<String> waysOut,
            @Nullable Bands bands,
            boolean takeable) {}

    /**
     * The day as a picture.
     *
     * @param nowX where the now-line stands; below zero when it lies outside
     */
    public record Bands(String finding, int width, int height, int nowX, List<Lane> lanes, List<Tick> ticks) {}

    /** One attempt or one person. */
    public record Lane(String name, int y, List<Bar> bars) {}

    /** @param kind part's word, for its look */
    public record Bar(int x, int width, String kind, String title) {}

    public record Tick(int x, String words) {}
}
