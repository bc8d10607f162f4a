package org.skeinday.attempt.web;

import java.util.List;

/**
 * The result of an event as a document to print and sign, in finished words.
 *
 * @param title of the event; empty where there is none
 * @param head day, hall, kind
 * @param rules as a sentence
 * @param standing provisional or final, with version and time
 * @param printed when, in words
 * @param changes since the version that was final last
 * @param numbers of the attempts
 * @param summaries over all, and one for each division
 * @param stops when the hall stood still, and why
 * @param annex each attempt that was flown
 */
public record DocumentView(
        String title,
        String head,
        String rules,
        String standing,
        String printed,
        List<String> changes,
        String scoreWords,
        List<Integer> numbers,
        List<Summary> summaries,
        List<ResultView.Meaning> legend,
        List<String> stops,
        List<Attempt> annex) {
    static final DocumentView NONE =
            new DocumentView("", "", "", "", "", List.of(), "", List.of(), List.of(), List.of(), List.of(), List.of());

    /** The order of all entries, or of those of one division. */
    public record Summary(String name, List<ResultView.Row> rows) {}

    /**
     * One attempt.
     *
     * @param lines readings, what was decided, protests
     * @param signers who signs, and what stands there already
     */
    public record Attempt(
            String title, String time, String how, List<NowView.Line> lines, List<NowView.Line> signers) {}
}
