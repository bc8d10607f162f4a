package org.skeinday.steps.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.steps.Moment;
import org.skeinday.steps.Step;

/** What is worth saying above the list while an attempt is called and not wound yet. */
final class NoticesPresenter {
    private static final String START = "Winding may start.";

    private final List<Pause.Place> all;
    private final Optional<Pause.Place> itsPlace;
    private final String called;
    private final boolean waits;

    /**
     * @param itsPlace the list of the winding place of the attempt that is called
     * @param called id of the attempt that is, and is not wound yet; empty for none
     * @param waits whether winding waits
     */
    NoticesPresenter(List<Pause.Place> all, Optional<Pause.Place> itsPlace, String called, boolean waits) {
        this.all = all;
        this.itsPlace = itsPlace;
        this.called = called;
        this.waits = waits;
    }

    /** @param shown the list that stands beneath, which needs no link */
    List<ChecksView.Notice> above(Optional<Pause.Place> shown) {
        List<ChecksView.Notice> notices = new ArrayList<>();
        if (mayStart()) {
            notices.add(new ChecksView.Notice(START, "/", "To Now"));
        }
        itsPlace.filter(NoticesPresenter::isLeftOver)
                .map(p -> left(p, shown.filter(p::equals).isPresent()))
                .ifPresent(notices::add);
        return notices;
    }

    /** What is said at the end of a list; the one before winding names winding and not what is read aloud after it. */
    String ending(Pause.Place place) {
        return place.run()
                .ending()
                .map(next -> place.moment() != Moment.BEFORE_WINDING
                        ? next
                        : mayStart() ? START : "Winding waits for something else.")
                .orElse("");
    }

    private boolean mayStart() {
        return !called.isEmpty()
                && !waits
                && all.stream()
                        .anyMatch(p -> p.moment() == Moment.BEFORE_WINDING
                                && p.subject().equals(called)
                                && p.run().isComplete());
    }

    /** Open, though nothing that winding waits for. */
    static boolean isLeftOver(Pause.Place place) {
        return !place.run().isComplete() && place.run().open().stream().noneMatch(Step::critical);
    }

    private static ChecksView.Notice left(Pause.Place place, boolean isShown) {
        int open = place.run().open().size();
        return new ChecksView.Notice(
                open + (open == 1 ? " item is" : " items are") + " left in " + ChecksPages.title(place) + ".",
                isShown ? "" : ChecksPages.address(place),
                "To the list");
    }
}
