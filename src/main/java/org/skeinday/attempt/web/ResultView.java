package org.skeinday.attempt.web;

import java.util.List;

/**
 * The result sheet in finished words.
 *
 * @param finding who leads, and by what
 * @param about the event, its rule of the score, how much of it is flown
 * @param divisions to look at one of them; empty where there is none to choose
 * @param desk whether whoever looks may go to the chief's desk
 * @param query what the address has after its path, to be asked for again
 * @param ticks of the time axis; empty before the first time
 * @param axis where the axis begins and ends, for a screen without room for its ticks; empty before the first time
 * @param ofCrew whether whoever looks may open the record of an attempt and see who signed it
 * @param legend what the notes on the sheet mean
 * @param standing whether it is final, and who may make it so
 * @param changes of rules and windows after a flight was official
 * @param stops when the hall stood still, and why
 */
public record ResultView(
        String finding,
        String about,
        List<Division> divisions,
        boolean desk,
        String query,
        String scoreWords,
        List<Integer> numbers,
        List<Tick> ticks,
        String axis,
        List<Row> rows,
        List<Meaning> legend,
        Standing standing,
        List<How> hows,
        List<String> stops,
        List<String> changes,
        List<OpenAttempt> underWay,
        boolean ofCrew) {
    /** A note of the sheet and what it means. */
    public record Meaning(String note, String means) {}

    /**
     * Whether the result is final.
     *
     * @param words empty where the officials elsewhere make it
     * @param made whether it is final as it is shown
     * @param changes since the version that was final last
     * @param mayMake whether whoever looks may make it final
     * @param owed what stands against that; empty for nothing
     * @param seen what the form sends back
     * @param after the version that was final last, 0 for none
     * @param wrong why it was refused
     */
    public record Standing(
            String words,
            boolean made,
            List<String> changes,
            boolean mayMake,
            List<String> owed,
            String seen,
            int after,
            String wrong) {
        static final Standing NONE = new Standing("", false, List.of(), false, List.of(), "", 0, "");
    }

    /** One division, or all. @param path where it is looked at */
    public record Division(String name, String path, boolean isShown) {}

    /** @param x along the axis, 0 to 100 */
    public record Tick(String x, String words) {}

    /** One official time on the axis. */
    public record Dot(String x, boolean provisional) {}

    /**
     * One entry.
     *
     * @param attempts for each attempt of the rules its tries, one at least
     * @param provisional whether its score may still change
     */
    public record Row(
            String place,
            String entry,
            String team,
            List<Dot> dots,
            List<List<Cell>> attempts,
            String score,
            boolean provisional) {}

    /**
     * One try in words.
     *
     * @param attempt its id, empty for none
     * @param note what it is if no official flight, which try of its attempt it is if not the first; empty for neither
     * @param mark class of the words: provisional, open, or empty
     */
    public record Cell(String attempt, String words, String note, String mark) {}

    /**
     * How one official time came about.
     *
     * @param signed who has signed it and who must; empty where nobody signs
     * @param protest empty for none
     */
    public record How(String id, String attempt, String words, String signed, String protest) {}
}
