package org.skeinday.review.web;

import java.util.List;
import org.skeinday.platform.http.FormErrors;

/**
 * One flight with everything that was noted of it.
 *
 * @param attempt its id, empty for a practice flight
 * @param valid whether it enters averages
 * @param spoilt why it does not
 * @param seen how it is judged, for a form that two may send
 * @param links to its record or form
 */
public record OneFlightView(
        String id,
        String title,
        boolean attempt,
        boolean valid,
        List<Line> figures,
        String remaining,
        String spoilt,
        String contact,
        String seen,
        FormErrors form,
        String problem,
        boolean saved,
        List<EveningView.Link> links) {
    public record Line(String label, String value) {}
}
