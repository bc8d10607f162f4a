package org.skeinday.attempt.web;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Readings;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchTaken;
import org.skeinday.attempt.action.TimeDoubts;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Caller;
import org.skeinday.units.FlightTime;

/** What the watches of the attempt on the card say, in a line. */
final class WatchWords {
    private WatchWords() {}

    /** Who is ready, then what each has read. @param wanted as many watches as the rules ask for */
    static String watches(Tx tx, AttemptNow attempt, Timed timed, int wanted) {
        List<ReadingTaken> readings = Readings.thatCount(timed);
        if (readings.isEmpty()) {
            int ready = timed.marks().ready().size();
            int taken = WatchStore.watches(tx, attempt.id()).size();
            return ready + " of " + wanted + " ready"
                    + (taken > ready ? "; " + taken + (taken == 1 ? " is" : " are") + " taken" : "");
        }
        return readings.stream()
                .map(r -> r.slot() + ": " + new FlightTime(r.durationMs()).text(2)
                        + (r.isPartial() ? " (partial)" : "")
                        + contacts(timed.marks().contacts(r.slot())))
                .collect(Collectors.joining(", "));
    }

    /** @param quiet whether nobody is told a time */
    static List<NowView.Choice> several(Tx tx, String attempt, boolean quiet) {
        List<String> counting = Readings.thatCount(WatchStore.readings(tx, attempt)).stream()
                .map(ReadingTaken::id)
                .toList();
        return WatchStore.toChooseFrom(tx, attempt).stream()
                .map(r -> new NowView.Choice(
                        r.id(),
                        "watch " + r.slot() + ", "
                                + (r.isPartial()
                                        ? "taken over in the air"
                                        : r.wasTapped() ? "as it was pressed" : "as it was typed")
                                + (quiet ? "" : ": " + new FlightTime(r.durationMs()).text(2))
                                + (counting.contains(r.id()) ? " (counts now)" : "")))
                .toList();
    }

    /** Whoever times their own team, and why the chief lets them. */
    static List<NowView.Line> allowed(Tx tx, String attempt) {
        return WatchStore.watches(tx, attempt).stream()
                .filter(w -> w.allowed() != null)
                .map(w -> new NowView.Line(
                        "watch " + w.slot(), "times its own team; the chief allowed it: " + w.allowed()))
                .toList();
    }

    /** Who has a watch; on a device that nobody has named the device itself. @param nameOf of a person's id */
    static String who(WatchTaken watch, UnaryOperator<String> nameOf) {
        return !watch.personId().isEmpty()
                ? nameOf.apply(watch.personId())
                : watch.device().equals(Caller.LAPTOP) ? "the laptop" : "";
    }

    private static String contacts(String words) {
        return words.isEmpty() ? "" : " (" + words + ")";
    }

    /** While it is quiet nobody sees what another has measured. */
    static String counted(List<ReadingTaken> readings) {
        int in = Readings.thatCount(readings).size();
        return in == 0 ? "none has a reading yet" : in + (in == 1 ? " has a reading" : " have a reading");
    }

    /** What the rule makes of the watches as they are, and how. */
    static Optional<NowView.Line> wouldBe(TimeDoubts doubts) {
        try {
            return doubts.watches().counted().isEmpty()
                    ? Optional.empty()
                    : Optional.of(new NowView.Line(
                            "by the rule",
                            doubts.watches().reduce(doubts.rule().time()).how()));
        } catch (IllegalArgumentException e) {
            return Optional.empty(); // of these the rule makes nothing: the caution says why
        }
    }
}
