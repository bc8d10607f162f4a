package org.skeinday.paper.action;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.action.CloseAttempt;
import org.skeinday.attempt.action.JudgeFlight;
import org.skeinday.attempt.action.PhaseGate;
import org.skeinday.attempt.action.WhyNotFly;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.Day;
import org.skeinday.exchange.DayFiles;
import org.skeinday.exchange.DayRows;
import org.skeinday.exchange.action.ExchangeDayReader;
import org.skeinday.paper.CardOrder;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.standing.Scoring;
import org.skeinday.timing.OfficialTime;
import org.skeinday.timing.TimeDecision;
import org.skeinday.timing.WatchReading;
import org.skeinday.timing.Watches;
import org.skeinday.units.FlightTime;

/** An attempt card into the record: the attempt whole, with its watches, its time and what was noted, from paper. */
public final class KeyIn {
    private static final int WATCHES = 3;

    /**
     * A card.
     *
     * @param entry id
     * @param fields text by the names of {@link CardOrder}
     * @param zone of the laptop
     */
    public record Card(String entry, Map<String, String> fields, String zone) {}

    private KeyIn() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        return List.of(new ActKind<>(
                "paper.key-in", Card.class, (tx, context, card) -> decide(tx, context, card, people.get())));
    }

    static Decision decide(Tx tx, ActContext context, Card card, Map<String, String> people) {
        EntryAdded entry = EntryStore.find(tx, card.entry()).orElse(null);
        if (entry == null) {
            return Decision.unknown("There is no such entry; choose one of the list");
        }
        EventAdded event = EventStore.find(tx, entry.eventId()).orElseThrow();
        Map<String, String> wrong = new LinkedHashMap<>();
        List<FlightTime> times = new ArrayList<>();
        List<Integer> slots = new ArrayList<>();
        watches(card, times, slots, wrong);
        CardCatch caught = CardCatch.of(tx, event, card.fields());
        caught.wrong(times.size()).ifPresent(why -> wrong.put(CardOrder.TIMES_AT, why));
        Optional<OfficialTime> official = official(tx, event, card, caught, times, slots, wrong);
        Map<String, String> cells = cells(card, event, entry, caught, official.orElse(null), wrong, context.now());
        String typed = card.fields().getOrDefault("attempt", "");
        Optional<AttemptNow> known = CompleteAttempt.find(tx, entry, typed);
        if (known.isEmpty()) {
            noMore(tx, event, entry).ifPresent(why -> wrong.putIfAbsent("attempt", why));
        }
        cells.put("attempt", CardNumber.running(tx, entry, typed, known.map(AttemptNow::number), wrong));
        Day there = ExchangeDayReader.all(tx, people);
        DayFiles.Read read = DayRows.read(
                "attempts.csv",
                cells,
                known.map(a -> there.without("attempts.csv", a.id())).orElse(there),
                CompleteAttempt.ids(context, known),
                ZoneId.of(card.zone()));
        read.errors().forEach(error -> wrong.putIfAbsent(field(error), error.inForm()));
        if (wrong.isEmpty()) {
            Optional.ofNullable(imported(read).motorId())
                    .flatMap(named -> WhyNotFly.wrongMotor(tx, entry, named))
                    .ifPresent(why -> wrong.put("motor", why));
        }
        if (!wrong.isEmpty()) {
            return new Decision.Refused(String.join(" ", wrong.values()), wrong);
        }
        Optional<Decision> asked =
                CardFlight.asked(tx, event, read, card.fields().get(AskedOnce.FIELD));
        if (asked.isPresent()) {
            return asked.get();
        }
        List<Fact> facts = new ArrayList<>(known.map(a -> new CompleteAttempt(tx, context, a).facts(read))
                .orElseGet(() -> read.facts().stream()
                        .map(named -> Fact.of(named.kind(), named.body()))
                        .toList()));
        String attempt = imported(read).id();
        facts.add(known.map(a -> JudgeFlight.fact(tx, context, a))
                .orElseGet(() -> JudgeFlight.fromPaper(tx, event, attempt)));
        for (int i = 0; i < times.size(); i++) {
            var reading = new ReadingTaken(
                    context.nextId(),
                    attempt,
                    slots.get(i),
                    ReadingTaken.HAND_WATCH,
                    null,
                    caught.ran(times.get(i)).millis(),
                    context.now().toEpochMilli(),
                    null,
                    null,
                    null);
            facts.add(Fact.of("attempt.reading", reading));
            facts.addAll(caught.marks(tx, context, attempt, slots.get(i), times.get(i)));
        }
        if (known.isPresent()) {
            caught.ended(attempt, context.now().toEpochMilli()).ifPresent(facts::add);
        }
        CardMotor.flown(tx, context, imported(read).motorId(), known).ifPresent(facts::add);
        return new Decision.Decided(facts, Map.of(), PhaseGate.FIRST);
    }

    /** A card takes no more attempts than a call does. */
    private static Optional<String> noMore(Tx tx, EventAdded event, EntryAdded entry) {
        return WhyNotFly.whyNoMore(
                tx,
                entry,
                Scoring.of(event, FlightRulesStore.of(tx, event.id())),
                AttemptStore.ofEvent(tx, event.id()).stream()
                        .filter(a -> a.entryId().equals(entry.id()))
                        .toList());
    }

    static AttemptImported imported(DayFiles.Read read) {
        return read.facts().stream()
                .map(DayFiles.Named::body)
                .filter(AttemptImported.class::isInstance)
                .map(AttemptImported.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static void watches(Card card, List<FlightTime> times, List<Integer> slots, Map<String, String> wrong) {
        for (int slot = 1; slot <= WATCHES; slot++) {
            String typed = card.fields().getOrDefault(CardOrder.nameOfWatch(slot), "");
            if (!typed.isEmpty()) {
                try {
                    times.add(FlightTime.parse(typed));
                    slots.add(slot);
                } catch (IllegalArgumentException e) {
                    wrong.put(CardOrder.nameOfWatch(slot), String.valueOf(e.getMessage()));
                }
            }
        }
    }

    /** Watches in doubt need a word in the note, as they need a reason on the page Now. */
    private static Optional<OfficialTime> official(
            Tx tx,
            EventAdded event,
            Card card,
            CardCatch caught,
            List<FlightTime> times,
            List<Integer> slots,
            Map<String, String> wrong) {
        if (times.isEmpty() || !wrong.isEmpty()) {
            return Optional.empty();
        }
        List<WatchReading> read = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            read.add(caught.reading(String.valueOf(slots.get(i)), times.get(i)));
        }
        TimeDecision decision = new Watches(read).decide(CloseAttempt.watchesRule(tx, event));
        if (decision instanceof TimeDecision.Taken taken) {
            return Optional.of(taken.time());
        }
        TimeDecision.ForAPerson open = (TimeDecision.ForAPerson) decision;
        String note = card.fields().getOrDefault("note", "").strip();
        if (note.isEmpty() && event.dayKind() != DayKind.VISITING) {
            wrong.put(
                    "note",
                    "The watches are in doubt: write here why the time is taken all the same. "
                            + String.join(" ", open.reasons()));
            return Optional.empty();
        }
        return open.proposed().map(time -> new OfficialTime(time.millis(), time.how() + ". In doubt: " + note));
    }

    /** The card as a row of attempts.csv. */
    private static Map<String, String> cells(
            Card card,
            EventAdded event,
            EntryAdded entry,
            CardCatch caught,
            @Nullable OfficialTime official,
            Map<String, String> wrong,
            Instant now) {
        Map<String, String> cells = new LinkedHashMap<>();
        for (List<CardOrder> part : List.of(CardOrder.BEFORE, CardOrder.AFTER)) {
            part.stream()
                    .filter(field -> !field.column().isEmpty())
                    .forEach(field -> cells.put(field.column(), card.fields().getOrDefault(field.name(), "")));
        }
        cells.put("event", event.name());
        cells.put("entry", entry.name());
        cells.put("state", State.CLOSED.word());
        cells.put("from paper", "yes");
        cells.put("ended", DayRows.moment(now.toEpochMilli(), ZoneId.of(card.zone())));
        if (caught.isNobodys()) {
            cells.putAll(caught.cells());
            return cells;
        }
        String announced = cells.getOrDefault("announced", ""); // when it was is not on the card
        if (event.dayKind() == DayKind.VISITING || official == null) {
            byAnnouncement(cells, announced, wrong, event);
        } else {
            cells.put("official", new FlightTime(official.millis()).text(0));
            cells.put("how", official.how() + "; from paper");
        }
        return cells;
    }

    private static void byAnnouncement(
            Map<String, String> cells, String announced, Map<String, String> wrong, EventAdded event) {
        if (announced.isEmpty() && wrong.isEmpty()) {
            boolean visiting = event.dayKind() == DayKind.VISITING;
            wrong.put(
                    visiting ? "announced" : CardOrder.nameOfWatch(1),
                    visiting
                            ? "An attempt elsewhere needs the time that the officials announced."
                            : "A card needs at least one watch.");
        }
        cells.put("official", announced);
        cells.put("how", "announced by the officials; from paper");
    }

    private static String field(CellError error) {
        return error.column().replace(' ', '-');
    }
}
