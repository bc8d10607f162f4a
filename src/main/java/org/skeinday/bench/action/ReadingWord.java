package org.skeinday.bench.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.winding.HeldDoubts;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindConfirmed;
import org.skeinday.winding.WindHeld;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.store.WindStore;

/** What a person says of one reading that is asked about after a wind: it was so, it is left out, and back from either. */
public final class ReadingWord {
    public static final String SO = "wind.confirm";
    public static final String LEFT_OUT = "wind.leave-out";
    /** It is taken in again, or asked about again. */
    public static final String AGAIN = "wind.ask-again";

    /** @param mark id of a mark of the needle, or what names a reading of the hold, see {@link HeldDoubts} */
    public record Reading(String mark) {
        public Reading {
            if (mark == null) { // of what no page has sent
                throw new IllegalArgumentException("'mark' must name a reading, but was missing");
            }
        }
    }

    private ReadingWord() {}

    static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>(SO, Reading.class, ReadingWord::confirm),
                new ActKind<>(LEFT_OUT, Reading.class, ReadingWord::leaveOut),
                new ActKind<>(AGAIN, Reading.class, ReadingWord::askAgain));
    }

    private static Decision unknown() {
        return Decision.unknown("There is no such reading; look again");
    }

    /** It counts no more and stays in the record. */
    static Decision leaveOut(Tx tx, ActContext context, Reading reading) {
        Optional<Wind> hold = HeldDoubts.windOf(reading.mark()).flatMap(wind -> WindStore.find(tx, wind));
        if (hold.isPresent()) {
            return Decision.decided(
                    WindActions.TOPICS,
                    Fact.of(
                            "wind.held",
                            new WindHeld(hold.get().begun().id(), HeldDoubts.without(hold.get(), reading.mark()))));
        }
        return WindStore.mark(tx, reading.mark())
                .map(mark -> marked(tx, context, mark.omitted()))
                .orElseGet(ReadingWord::unknown);
    }

    private static Decision marked(Tx tx, ActContext context, WindMark mark) {
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("wind.mark", mark)));
        WindStore.find(tx, mark.windId())
                .ifPresent(wind -> facts.addAll(TorquesFollow.marks(tx, context, wind, wind.with(mark))));
        return new Decision.Decided(facts, Map.of(), WindActions.TOPICS);
    }

    /** It was so: nobody is asked about this reading again. */
    static Decision confirm(Tx tx, ActContext context, Reading reading) {
        return windOf(tx, reading)
                .<Decision>map(wind -> {
                    List<Fact> facts = new ArrayList<>(List.of(Fact.of(
                            "wind.confirmed",
                            new WindConfirmed(reading.mark(), wind.begun().id()))));
                    facts.addAll(AboveBand.marks(tx, context, wind, Set.of(reading.mark())));
                    return new Decision.Decided(facts, Map.of(), WindActions.TOPICS);
                })
                .orElseGet(ReadingWord::unknown);
    }

    private static Optional<Wind> windOf(Tx tx, Reading reading) {
        return HeldDoubts.windOf(reading.mark())
                .or(() -> WindStore.mark(tx, reading.mark()).map(WindMark::windId))
                .flatMap(wind -> WindStore.find(tx, wind));
    }

    /** The word was a slip: what was left out counts again, what was confirmed is asked about again. */
    static Decision askAgain(Tx tx, ActContext context, Reading reading) {
        WindMark out =
                WindStore.mark(tx, reading.mark()).filter(WindMark::leftOut).orElse(null);
        if (out != null) {
            return marked(tx, context, out.takenIn());
        }
        Wind wind = windOf(tx, reading).orElse(null);
        if (wind == null) {
            return unknown();
        }
        String id = wind.begun().id();
        if (!WindStore.confirmed(tx, id).contains(reading.mark())) {
            return Decision.refused("Nobody has said anything of this reading: it is asked about as it is");
        }
        List<Fact> facts = new ArrayList<>(List.of(Fact.of("wind.asked-again", new WindConfirmed(reading.mark(), id))));
        facts.addAll(AboveBand.askedAgain(tx, context, wind, reading.mark()));
        return new Decision.Decided(facts, Map.of(), WindActions.TOPICS);
    }
}
