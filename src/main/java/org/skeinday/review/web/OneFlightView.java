package org.skeinday.review.web;

import java.util.List;
import org.skeinday.platform.http.FormErrors;

/**
 * One flight with everything that was noted of it.
 *
 * @param attempt whether it is an official one
 * @param counts whether it enters averages, in words
 * @param valid whether it does
 * @param steered whether it was steered: then no word makes it count
 * @param spoilt why it is left out
 * @param numbers that wait to be confirmed
 * @param changed what the last correction did to a forecast, empty for nothing
 * @param seen how it is judged, for a form that two may send
 * @param links to its record or form
 */
public record OneFlightView(
        String id,
        String title,
        boolean attempt,
        String counts,
        boolean valid,
        boolean steered,
        List<Line> figures,
        String remaining,
        String spoilt,
        String contact,
        String seen,
        FormErrors form,
        String problem,
        boolean saved,
        String changed,
        List<OpenQuestionsView.Told> numbers,
        List<EveningView.Link> links) {
    public record Line(String label, String value) {}
}
