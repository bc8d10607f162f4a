package org.skeinday.review.web;

import java.util.List;

/** Two to four flights beside each other. @param problem why there are none, empty when there are */
public record CompareView(String problem, List<EveningView.Link> flights, List<Line> lines) {
    /** @param texts one for each flight, empty where it is not known */
    public record Line(String label, List<String> texts, boolean differs) {}
}
