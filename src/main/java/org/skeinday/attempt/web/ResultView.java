package org.skeinday.attempt.web;

import java.util.List;

/** The result sheet in finished words. */
public record ResultView(String title, String scoreWords, List<Integer> numbers, List<Row> rows, List<How> hows) {
    /** One entry. */
    public record Row(String place, String entry, List<String> attempts, String score) {}

    /** How one official time came about. */
    public record How(String attempt, String words) {}
}
