package org.skeinday.attempt.web;

import java.util.List;

/** The result sheet in finished words. @param stops when the hall stood still, and why */
public record ResultView(
        String title,
        String scoreWords,
        List<Integer> numbers,
        List<Row> rows,
        List<How> hows,
        List<String> stops,
        List<OpenAttempt> underWay) {
    /** One entry. @param attempts for each attempt of the rules its tries, one at least */
    public record Row(String place, String entry, List<List<Cell>> attempts, String score) {}

    /**
     * One try in words.
     *
     * @param attempt its id, empty for none
     * @param nth which try of its attempt; empty for the first
     */
    public record Cell(String attempt, String words, String nth) {}

    /**
     * How one official time came about.
     *
     * @param signed who has signed it and who must; empty where nobody signs
     * @param protest empty for none
     */
    public record How(String id, String attempt, String words, String signed, String protest) {}
}
