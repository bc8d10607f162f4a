package org.skeinday.paper.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.LateReadings;
import org.skeinday.attempt.MotorUses;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.MotorUseStore;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.attempt.web.Announced;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.Terms;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.device.web.Qr;
import org.skeinday.hall.web.ReaderUnits;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.BatchStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.paper.AttemptCard;
import org.skeinday.paper.action.PrintCards;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.steps.Caution;
import org.skeinday.steps.Cautions;
import org.skeinday.units.FlightTime;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.units.UnitSystem;

/** What is printed from the browser: attempt cards, motor tags, the page for a dispute. */
public final class PaperPages {
    /** Two for the lane, one for who comes first. */
    private static final List<Caution> CAUTIONS = Cautions.named(
            "eyes", Cautions.GOGGLES, Cautions.LOOKING_UP, Cautions.LANDED, Cautions.DRIPPED, "venue-rules");

    private static final List<String> ABORT_RULES = List.of(
            "Anyone says stop: run it back, no questions.",
            "A strand nicked, a ring not seated, a model damaged: back on the meter, run it down, begin anew.",
            "Latest start passed: run it back, take the next window.");

    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;
    private final Supplier<String> address;

    /** @param address that tablets reach the laptop by, for the tags' codes */
    public PaperPages(ActStore record, FormActs forms, Page page, Clock clock, Supplier<String> address) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
        this.address = address;
    }

    public void register(Routes routes) {
        routes.advice(
                "/cards",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "Attempt cards", "paper/cards.jte", cards(ctx, "", false)));
        routes.advice(
                "/cards/printed",
                Role.CAPTAIN,
                ctx -> page.fragment(ctx, "paper/_printed.jte", record.read(this::onPaper)));
        routes.post("/cards/print", Role.CAPTAIN, ctx -> {
            routes.refuseAdvice();
            print(ctx);
        });
        routes.get(
                "/cards/host",
                Role.CAPTAIN,
                ctx -> page.show(
                        ctx,
                        "Timekeepers' cards",
                        "paper/host-cards.jte",
                        record.read(tx -> new HostCards(tx, clock).view())));
        routes.get("/tags", Role.CAPTAIN, ctx -> page.show(ctx, "Motor tags", "paper/tags.jte", tags(ctx)));
        routes.advice(
                "/dispute/{attempt}",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "For a dispute", "paper/dispute.jte", dispute(ctx.pathParam("attempt"))));
    }

    /** The record keeps what the cards show before they are printed, so that a page can say what has changed since. */
    private void print(Context ctx) {
        List<PrintCards.Card> shown = record.read(
                tx -> EventStore.next(tx).map(event -> printed(tx, event).now()).orElse(List.of()));
        String wrong = FormActs.words(ctx, forms.submit(ctx, "card.print", new PrintCards.Print(shown)));
        page.fragment(ctx, "paper/_cards.jte", cards(ctx, wrong, wrong.isEmpty()));
    }

    private PrintedPresenter printed(Tx tx, EventAdded event) {
        return new PrintedPresenter(tx, event, clock.getZone(), clock.millis());
    }

    private List<CardsView.Printed> onPaper(Tx tx) {
        return EventStore.next(tx).map(event -> printed(tx, event).view()).orElse(List.of());
    }

    private CardsView cards(Context ctx, String wrong, boolean prints) {
        List<AttemptCard> cards = record.read(tx -> EventStore.next(tx)
                .map(event -> new Cards(tx, event, ReaderUnits.of(ctx), record.people()::name, clock.millis()).all())
                .orElse(List.of()));
        String none = cards.isEmpty()
                ? "There is no own entry with an attempt left. Enter your team in Prepare, page Entries, and mark it own."
                : "";
        return new CardsView(
                cards,
                ABORT_RULES,
                moment(clock.millis()),
                none,
                CAUTIONS,
                prints ? List.of() : record.read(this::onPaper), // the list beside the cards hears of it by itself
                wrong,
                prints);
    }

    private TagsView tags(Context ctx) {
        UnitSystem units = ReaderUnits.of(ctx);
        return record.read(tx -> {
            MotorUses uses = MotorUseStore.all(tx);
            return new TagsView(
                    MotorStore.all(tx).stream()
                            .map(motor -> tag(tx, motor, uses.of(motor.id()), units))
                            .toList(),
                    moment(clock.millis()));
        });
    }

    private TagsView.Tag tag(Tx tx, MotorAdded motor, int uses, UnitSystem units) {
        String link = address.get() + "/bench/motor/" + motor.id();
        return new TagsView.Tag(
                motor.tag(),
                BatchStore.find(tx, motor.batchId()).map(BatchAdded::name).orElse(""),
                motor.turns().withArrow(),
                units.length(Length.ofMillimetres(motor.loopMm())) + ", " + units.mass(Mass.ofGrams(motor.massG())),
                MotorUses.words(uses),
                Qr.path(link),
                Qr.side(link));
    }

    private DisputeView dispute(String id) {
        return record.read(tx -> AttemptStore.find(tx, id)
                .map(attempt -> dispute(tx, attempt))
                .orElseThrow(() -> Refusal.notFound("There is no such attempt.")));
    }

    private DisputeView dispute(Tx tx, AttemptNow attempt) {
        EventAdded event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        Terms terms = TermsStore.of(tx, event.id());
        AttemptNoted noted = AttemptStore.note(tx, attempt.id());
        List<ReadingTaken> readings = WatchStore.readings(tx, attempt.id());
        String entry = EntryStore.find(tx, attempt.entryId()).orElseThrow().name();
        List<DisputeView.Line> lines = new ArrayList<>();
        lines.add(new DisputeView.Line("Released", moment(attempt.releasedAtMs())));
        lines.add(new DisputeView.Line(
                "Announced", Announced.of(tx, attempt, event, false).orElse("nothing announced yet")));
        lines.add(new DisputeView.Line("Announced at", moment(noted.announcedAtMs())));
        long until = Announced.until(terms, noted);
        lines.add(new DisputeView.Line("To protest until", until == Long.MAX_VALUE ? "not known" : moment(until)));
        lines.add(new DisputeView.Line("Contact", text(noted.contacts())));
        lines.add(new DisputeView.Line("Sections", text(terms.sections())));
        return new DisputeView(
                entry + ", " + attempt.number().words(),
                event.name() + ", " + event.day(),
                lines,
                readings.stream()
                        .map(reading -> watch(reading, LateReadings.isLate(reading, attempt)))
                        .toList());
    }

    private static String text(@org.jspecify.annotations.Nullable String text) {
        return text == null ? "" : text;
    }

    private DisputeView.Line watch(ReadingTaken reading, boolean late) {
        String who = reading.personId() == null || reading.personId().isEmpty()
                ? ""
                : ", " + record.people().name(reading.personId());
        return new DisputeView.Line(
                "Watch " + reading.slot() + who
                        + (reading.instrument().equals("watch") ? ", hand watch" : ", on a device"),
                new FlightTime(reading.durationMs()).text(2) + (late ? " – came in after the closing" : ""));
    }

    private String moment(@org.jspecify.annotations.Nullable Long ms) {
        return ms == null
                ? ""
                : java.time.format.DateTimeFormatter.ofPattern("HH:mm:ss")
                        .format(java.time.Instant.ofEpochMilli(ms).atZone(clock.getZone()));
    }
}
