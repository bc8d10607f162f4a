package org.skeinday.attempt.action;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.store.EventsUnderWay;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.EventAtHand;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Which event people work on, where a season holds several, or a day two. */
public final class UseEvent {
    private UseEvent() {}

    /** Content of {@code event.use}. */
    public record Use(String event) {}

    public static List<ActKind<?>> kinds() {
        return List.of(new ActKind<>("event.use", Use.class, UseEvent::decide), ChooseUnits.kind());
    }

    /** An attempt under way must not go out of sight. */
    static Decision decide(Tx tx, ActContext context, Use use) {
        EventAdded event = EventStore.find(tx, use.event()).orElse(null);
        if (event == null || event.ofPractice()) {
            return Decision.unknown("There is no such event any more; look again");
        }
        Optional<EventAdded> now =
                EventStore.next(tx).filter(other -> !other.id().equals(event.id()));
        if (now.filter(other -> EventsUnderWay.comesFirst(tx, other)).isPresent()) {
            return Decision.refused(
                    "A motor broke or still has turns on: answer what stands on top of every page before"
                            + " you go to another event");
        }
        if (now.filter(other -> EventsUnderWay.isStopped(tx, other)).isPresent()) {
            return Decision.refused("The hall stands still: let it go on before you go to another event");
        }
        Optional<AttemptNow> open = now.flatMap(other -> EventsUnderWay.open(tx, other));
        return open.isPresent()
                ? Decision.refused("An attempt is under way: "
                        + WhyNotFly.stillUnderWay(tx, WhyNotFly.entryName(tx, open.get()), open.get()))
                : Decision.decided(
                        Set.of("attempts", "contest", "motors", "checks", "places", "day", "first"),
                        Fact.of("event.at-hand", new EventAtHand(event.id())));
    }
}
