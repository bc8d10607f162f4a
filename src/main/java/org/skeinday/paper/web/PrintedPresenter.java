package org.skeinday.paper.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.CardPrinted;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.PrintedCards;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.paper.AttemptCard;
import org.skeinday.paper.CardChanges;
import org.skeinday.paper.action.PrintCards;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.UnitSystem;

/** Which attempt cards are on paper, when they were printed, and in what they are out of date. */
final class PrintedPresenter {
    private final Tx tx;
    private final EventAdded event;
    private final ZoneId zone;
    private final long nowMs;

    PrintedPresenter(Tx tx, EventAdded event, ZoneId zone, long nowMs) {
        this.tx = tx;
        this.event = event;
        this.zone = zone;
        this.nowMs = nowMs;
    }

    /** The cards as they would be printed now, as the record keeps them: whoever looks, in whatever units. */
    List<PrintCards.Card> now() {
        return new Cards(tx, event, UnitSystem.METRIC, id -> id, nowMs)
                .all().stream().map(PrintedPresenter::shown).toList();
    }

    private static PrintCards.Card shown(AttemptCard card) {
        List<CardPrinted.Line> lines = new ArrayList<>();
        card.lines().forEach(line -> lines.add(line(line.label(), line.value())));
        lines.add(line("Direction", card.direction()));
        card.marks().forEach(mark -> lines.add(line("Floor mark at " + mark.label(), mark.value())));
        return new PrintCards.Card(card.entry(), card.rule(), lines);
    }

    private static CardPrinted.Line line(String label, String value) {
        return new CardPrinted.Line(
                PrintCards.cut(label, CardPrinted.LONGEST_LABEL), PrintCards.cut(value, CardPrinted.LONGEST_VALUE));
    }

    /** Of attempts that are still to come or under way: what is over is out of date for nobody. */
    List<CardsView.Printed> view() {
        List<PrintCards.Card> now = now();
        List<AttemptNow> attempts = AttemptStore.ofEvent(tx, event.id());
        List<CardsView.Printed> printed = new ArrayList<>();
        for (EntryAdded entry : EntryStore.ofEvent(tx, event.id())) {
            for (CardPrinted card : PrintedCards.ofEntry(tx, entry.id())) {
                changes(card, now, attempts)
                        .map(changes -> new CardsView.Printed(
                                entry.name() + ", attempt " + card.rule(),
                                PageWords.second(card.atMs(), zone),
                                changes))
                        .ifPresent(printed::add);
            }
        }
        return printed;
    }

    /** Empty for an attempt that is over. */
    private Optional<List<String>> changes(CardPrinted card, List<PrintCards.Card> now, List<AttemptNow> attempts) {
        return now.stream()
                .filter(one -> one.entry().equals(card.entryId()) && one.rule() == card.rule())
                .findFirst()
                .map(one -> CardChanges.of(card.lines(), one.lines()))
                .or(() -> attempts.stream()
                        .filter(a ->
                                a.entryId().equals(card.entryId()) && a.number().rule() == card.rule() && isUnderWay(a))
                        .findFirst()
                        .map(open -> motorChanged(card, open)));
    }

    private boolean isUnderWay(AttemptNow attempt) {
        return LiveAttempts.find(tx, attempt.id())
                .filter(live -> !live.phase().name().isOver())
                .isPresent();
    }

    /** Once it is called, Now has all of it; the paper is still held by whoever fetches the motor. */
    private List<String> motorChanged(CardPrinted card, AttemptNow open) {
        String tag = Optional.ofNullable(open.motorId())
                .flatMap(id -> MotorStore.find(tx, id))
                .map(MotorAdded::tag)
                .orElse("");
        return card.lines().stream()
                .filter(line -> line.label().equals("Motor"))
                .filter(line -> !line.shown().split(",", -1)[0].equals(tag))
                .map(line -> "motor (" + line.shown() + " → " + (tag.isEmpty() ? "none" : tag) + ")")
                .toList();
    }
}
