package org.skeinday.prepare.web;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.contest.EventAdded;
import org.skeinday.exchange.Day;
import org.skeinday.platform.db.Ledger;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.prepare.Sheet;

/** Which event a new row is most likely about. */
final class LikelyEvent {
    private LikelyEvent() {}

    /** The one that was added last, unless its day is over: then the one at hand, else the next by day. Practice is none. */
    static Optional<EventAdded> of(PrepareContext desk, Day day, Sheet thing) {
        List<EventAdded> events = stillOpen(day, thing);
        String today = LocalDate.now(desk.clock()).toString();
        Optional<EventAdded> last = desk.record()
                .read(tx -> events.stream().max(Comparator.comparingLong((EventAdded e) -> addedAt(tx, e))));
        return last.filter(e -> e.day().compareTo(today) >= 0)
                .or(() -> desk.atHand()
                        .filter(events::contains)
                        .filter(e -> e.day().compareTo(today) >= 0))
                .or(() -> events.stream()
                        .filter(e -> e.day().compareTo(today) >= 0)
                        .findFirst())
                .or(() -> events.stream().reduce((earlier, later) -> later));
    }

    /** Those that have no terms or rules yet, where each has just one; all when none is left. */
    private static List<EventAdded> stillOpen(Day day, Sheet thing) {
        List<String> have = switch (thing) {
            case TERMS -> day.more().terms().stream().map(t -> t.eventId()).toList();
            case RULES ->
                day.more().flightRules().stream().map(r -> r.eventId()).toList();
            default -> List.of();
        };
        List<EventAdded> events =
                day.events().stream().filter(e -> !e.ofPractice()).toList();
        List<EventAdded> open =
                events.stream().filter(e -> !have.contains(e.id())).toList();
        return open.isEmpty() ? events : open;
    }

    /** The journal's line: an id begins with that of the act that made it. */
    private static long addedAt(Tx tx, EventAdded event) {
        return Ledger.known(tx, ActContext.actOf(event.id()))
                .map(Ledger.Known::n)
                .orElse(0L);
    }
}
