package org.skeinday.paper.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptNumber;
import org.skeinday.attempt.action.AskedOnce;
import org.skeinday.attempt.store.AttemptNumbers;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.Stations;
import org.skeinday.attempt.web.ForecastWords;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.paper.CardOrder;
import org.skeinday.paper.action.KeyIn;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.units.BareNumber;
import org.skeinday.units.UnitSystem;

/** Key in: a card after the other, with the keyboard alone. */
public final class KeyInPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;

    public KeyInPages(ActStore record, FormActs forms, Page page, Clock clock) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.get(
                "/key-in",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Key in", "paper/key-in.jte", view(ctx, "", "", FormErrors.none())));
        routes.post("/key-in", Role.CAPTAIN, this::take);
    }

    private void take(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        Map<String, String> fields = new LinkedHashMap<>();
        CardOrder.BEFORE.forEach(f -> fields.put(f.name(), typed.typed(f.name()).strip()));
        CardOrder.AFTER.forEach(f -> fields.put(f.name(), BareNumber.with(typed.typed(f.name()), under(ctx, f))));
        fields.put(CardOrder.TIMES_AT, typed.typed(CardOrder.TIMES_AT));
        fields.put(AskedOnce.FIELD, typed.typed(AskedOnce.FIELD));
        var card = new KeyIn.Card(typed.typed("entry"), fields, clock.getZone().getId());
        ForecastWords before = forecast(fields);
        Answer answer = forms.submit(ctx, "paper.key-in", card);
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            page.fragment(
                    ctx,
                    "paper/_key-in.jte",
                    view(ctx, (saved(card) + before.changed(forecast(fields))).strip(), "", FormErrors.none()));
            return;
        }
        Map<String, String> fieldsWrong = answer instanceof Answer.Refused refused ? refused.fields() : Map.of();
        String problem = fieldsWrong.isEmpty() ? words : "Nothing was saved yet: see the marked fields.";
        page.fragment(ctx, "paper/_key-in.jte", view(ctx, "", problem, typed.withAll(fieldsWrong)));
    }

    private ForecastWords forecast(Map<String, String> fields) {
        String model = fields.getOrDefault("model", "");
        String motor = fields.getOrDefault("motor", "");
        return ForecastWords.of(
                record,
                record.read(ModelStore::all).stream()
                        .filter(m -> m.name().equalsIgnoreCase(model))
                        .map(ModelAdded::id)
                        .findFirst()
                        .orElse(""),
                record.read(MotorStore::all).stream()
                        .filter(m -> m.tag().equalsIgnoreCase(motor))
                        .map(MotorAdded::id)
                        .findFirst()
                        .orElse(""));
    }

    /** The unit that stood under the field; empty for what is no torque. */
    private static String under(Context ctx, CardOrder field) {
        String shown = ctx.formParam("unit-" + field.name());
        return !field.isTorque() ? "" : shown == null ? ReaderUnits.of(ctx).torqueUnitTyped() : shown;
    }

    /** A card has the rules' number: of its tries the last is the one that was keyed in. */
    private String saved(KeyIn.Card card) {
        String typed = card.fields().getOrDefault("attempt", "");
        return record.read(tx -> EntryStore.find(tx, card.entry())
                .map(entry -> "Saved from paper: " + entry.name() + ", "
                        + AttemptStore.ofEvent(tx, entry.eventId()).stream()
                                .filter(a -> a.entryId().equals(entry.id()))
                                .map(AttemptNow::number)
                                .filter(number -> String.valueOf(number.rule()).equals(typed))
                                .max(Comparator.comparingInt(AttemptNumber::running))
                                .map(AttemptNumber::words)
                                .orElse("attempt " + typed))
                .map(words -> words + ". ")
                .orElse(""));
    }

    private KeyInView view(Context ctx, String saved, String problem, FormErrors form) {
        UnitSystem units = ReaderUnits.of(ctx);
        return record.read(tx -> EventStore.next(tx)
                .map(event -> view(tx, event, saved, problem, form, units))
                .orElse(new KeyInView(
                        "", "", "", FormErrors.none(), false, List.of(), List.of(), List.of(), List.of(), List.of())));
    }

    private KeyInView view(Tx tx, EventAdded event, String saved, String problem, FormErrors form, UnitSystem team) {
        List<EntryAdded> entries = EntryStore.ofEvent(tx, event.id());
        String chosen = form.typedOr(
                "entry", next(tx, event, entries).map(EntryAdded::id).orElse(""));
        Map<String, String> first = first(tx, event, chosen);
        UnitSystem units = units(tx, event, chosen, team);
        List<KeyInView.Choice> choices = entries.stream()
                .map(e -> new KeyInView.Choice(e.id(), e.name(), e.id().equals(chosen)))
                .toList();
        return new KeyInView(
                event.name(),
                saved,
                problem,
                form,
                FlightRulesStore.of(tx, event.id()).hold().isPresent(),
                choices,
                ModelStore.all(tx).stream().map(m -> m.name()).toList(),
                MotorStore.all(tx).stream().map(MotorAdded::tag).toList(),
                fields(CardOrder.BEFORE, form, first, units),
                fields(CardOrder.after(event), form, first, units));
    }

    /** Of the meter where its attempt under way is wound, or the next one will be. */
    private static UnitSystem units(Tx tx, EventAdded event, String entry, UnitSystem team) {
        String open = AttemptStore.ofEvent(tx, event.id()).stream()
                .filter(a -> a.entryId().equals(entry) && a.isOpen())
                .map(AttemptNow::id)
                .findFirst()
                .orElse(null);
        return EntryStore.find(tx, entry)
                .map(of -> Stations.units(tx, of, open, team))
                .orElse(team);
    }

    /** Own entries first: those are the cards that a team has. The one with the fewest attempts comes next. */
    private static Optional<EntryAdded> next(Tx tx, EventAdded event, List<EntryAdded> entries) {
        List<AttemptNow> attempts = AttemptStore.ofEvent(tx, event.id());
        return entries.stream()
                .min(Comparator.comparing((EntryAdded e) -> !e.own())
                        .thenComparingLong(e -> had(attempts, e))
                        .thenComparing(EntryAdded::name));
    }

    private static long had(List<AttemptNow> attempts, EntryAdded entry) {
        return attempts.stream().filter(a -> a.entryId().equals(entry.id())).count();
    }

    /** What the card most likely says: the number of the attempt that is not over, else the next, the only model. */
    private static Map<String, String> first(Tx tx, EventAdded event, String entry) {
        Map<String, String> first = new LinkedHashMap<>();
        List<AttemptNow> own = AttemptStore.ofEvent(tx, event.id()).stream()
                .filter(a -> a.entryId().equals(entry))
                .toList();
        EntryAdded of = EntryStore.find(tx, entry).orElse(null);
        first.put(
                "attempt",
                own.stream()
                        .filter(a -> a.isOpen())
                        .map(AttemptNow::number)
                        .findFirst()
                        .or(() -> Optional.ofNullable(of).map(e -> AttemptNumbers.next(tx, e)))
                        .map(number -> String.valueOf(number.rule()))
                        .orElse(""));
        List<String> models =
                ModelStore.ofEntry(tx, entry).stream().map(m -> m.name()).toList();
        first.put("model", models.size() == 1 ? models.get(0) : "");
        return first;
    }

    private static List<KeyInView.Field> fields(
            List<CardOrder> order, FormErrors form, Map<String, String> first, UnitSystem units) {
        return order.stream()
                .map(f -> new KeyInView.Field(
                        f.name(),
                        f.label(),
                        form.typedOr(f.name(), first.getOrDefault(f.name(), "")),
                        form.message(f.name()),
                        f.name().equals("model")
                                ? "models"
                                : f.name().equals("motor") || f.name().equals("spare") ? "motors" : "",
                        f.isTorque() ? form.typedOr("unit-" + f.name(), units.torqueUnitTyped()) : ""))
                .toList();
    }
}
