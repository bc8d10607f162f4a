package org.skeinday.review.web;

import java.util.ArrayList;
import java.util.List;
import org.skeinday.platform.db.Tx;
import org.skeinday.review.ChangeNextTime;
import org.skeinday.review.Named;
import org.skeinday.review.store.ReviewFacts;

/** The three lines of an event, as its form shows them. */
final class ChangePresenter {
    private ChangePresenter() {}

    static ChangeView view(Tx tx, Named event) {
        List<String> there = ReviewFacts.change(tx, event.id()).lines();
        return new ChangeView(event.id(), three(there), there, "", false);
    }

    static List<String> three(List<String> lines) {
        List<String> three = new ArrayList<>(lines);
        while (three.size() < ChangeNextTime.MOST_LINES) {
            three.add("");
        }
        return three;
    }
}
