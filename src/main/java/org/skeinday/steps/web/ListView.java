package org.skeinday.steps.web;

import java.util.List;

/**
 * The form of one list.
 *
 * @param pause at which it is walked through: it stays there
 * @param advice what a list as long as this is warned of
 * @param wrong why the last revision was refused, empty when it was not
 */
public record ListView(
        String list,
        int revision,
        String pause,
        String title,
        String way,
        boolean aloud,
        String next,
        List<Row> rows,
        List<String> ways,
        List<String> answers,
        List<String> advice,
        String wrong) {
    /** @param id empty for a new item */
    public record Row(int number, String id, String text, String reason, boolean critical, String answer) {}
}
