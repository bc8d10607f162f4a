package org.skeinday.exchange;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.Contacts;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.units.EnumWords;

/** What stands in a row of {@code attempts.csv} about the wind, the flight, its announced time and when it was quiet. */
final class AttemptNotes {
    private static final List<String> COLUMNS = List.of(
            "spare",
            "peak torque",
            "back off",
            "remaining",
            "contacts",
            "note",
            "announced",
            "announced at",
            "from paper");

    static final String COUNTS = "counts";
    static final List<String> WHETHER_IT_COUNTS = List.of("yes", "no", "undecided");

    private AttemptNotes() {}

    static void take(Row row, ImportContext context, String attempt) {
        String spare = row.named("spare", context.motors);
        Quantity peak = Quantity.Kind.TORQUE.read(row, "peak torque");
        Double backOff = Numbers.decimal(row, "back off", 0, 10_000);
        Double remaining = Numbers.decimal(row, "remaining", 0, 100_000);
        Long announced = Numbers.time(row, "announced", 0, ReadingTaken.LONGEST_MS);
        Long announcedAt = context.moments.read(row, "announced at");
        boolean paper = row.yes("from paper");
        if (COLUMNS.stream().anyMatch(column -> !row.isEmpty(column))) {
            context.take(
                    row,
                    "attempt.noted",
                    () -> new AttemptNoted(
                            attempt,
                            spare.isEmpty() ? null : spare,
                            Quantity.siOrNull(peak),
                            Quantity.textOrNull(peak),
                            backOff,
                            remaining,
                            row.optional("contacts"),
                            row.optional("note"),
                            announced,
                            announcedAt,
                            paper));
        }
        quiet(row, context, attempt);
        judged(row, context, attempt);
        aloft(row, context, attempt);
    }

    /** What caught the model, and what it was steered with. */
    private static void aloft(Row row, ImportContext context, String attempt) {
        Long caught = Numbers.time(row, "caught at", 0, ReadingTaken.LONGEST_MS);
        Long freed = Numbers.time(row, "free again", 0, ReadingTaken.LONGEST_MS);
        String by = row.word("caught by");
        String steered = row.word("steered");
        boolean held = row.yes("still held");
        if (freed != null && (caught == null || freed < caught)) {
            row.error(
                    "free again",
                    "a model is free again after it was caught",
                    "write when it was caught in caught at, and a later time here");
        } else if (held && (caught == null || freed != null)) {
            row.error(
                    "still held",
                    "a model that is still held was caught and is not free again",
                    "write when it was caught in caught at, and leave free again empty");
        } else if (caught != null || !steered.isEmpty()) {
            context.take(
                    row,
                    "attempt.aloft",
                    () -> new Aloft(
                            attempt,
                            caught,
                            freed,
                            by.isEmpty() ? null : by,
                            held,
                            steered.isEmpty() ? EnumWords.of(Aloft.Steering.NONE) : steered));
        }
    }

    /** Whether the flight says something of model and motor; its official time is not touched. */
    private static void judged(Row row, ImportContext context, String attempt) {
        Long contact = Numbers.time(row, "contact at", 0, ReadingTaken.LONGEST_MS);
        String counts = row.word(COUNTS);
        boolean reason = !row.isEmpty("says nothing");
        int contacts = contacts(row.text("contacts"), !row.isEmpty("caught at"));
        if (counts.equals("no") != reason && !counts.isEmpty()) {
            row.error(
                    "says nothing",
                    reason
                            ? "a flight that counts has no reason against it"
                            : "a flight that does not count needs a reason",
                    reason ? "leave this empty, or write no in counts" : "write why, for example touched the wall");
        } else if (counts.equals("undecided") && contacts == 0) {
            row.error(
                    COUNTS,
                    "a flight is undecided as long as nobody has said what its contact means, and this one has none",
                    "write in contacts what it touched, in caught at when it was caught, or yes here");
        } else if (reason || contact != null || counts.equals("yes")) {
            context.take(
                    row,
                    "attempt.judged",
                    () -> FlightJudged.knowing(contacts, attempt, row.optional("says nothing"), contact));
        }
    }

    /** As the record judges it: whoever caught a model, or what, touched it. */
    private static int contacts(@Nullable String noted, boolean caught) {
        return Contacts.known(noted, caught ? List.of(0L) : List.of());
    }

    private static void quiet(Row row, ImportContext context, String attempt) {
        Long from = context.moments.read(row, "quiet from");
        Long to = context.moments.read(row, "quiet to");
        if (from != null) {
            context.take(row, to == null ? "quiet.began" : "quiet.ended", () -> new Quiet(attempt, from, to));
        } else if (to != null) {
            row.error("quiet from", "it is known until when it was quiet, but not from when", "write both or none");
        }
    }

    static void put(ExportContext book, String attempt, Table.Cells cells) {
        Optional<AttemptNoted> noted = book.noted(attempt);
        noted.ifPresent(n -> cells.put("spare", book.name(n.spareMotorId()))
                .put("peak torque", Quantity.Kind.TORQUE.text(n.peakTorqueNmm(), n.peakTorqueTyped()))
                .put("back off", Numbers.text(n.backOffCrankTurns()))
                .put("remaining", Numbers.text(n.remainingCrankTurns()))
                .put("contacts", n.contacts())
                .put("note", n.note())
                .put("announced", Numbers.time(n.announcedMs()))
                .put("announced at", book.moment(n.announcedAtMs()))
                .put("from paper", n.fromPaper() ? "yes" : "no"));
        book.judged(attempt)
                .ifPresent(j -> cells.put("says nothing", j.reason()).put("contact at", Numbers.time(j.contactMs())));
        int contacts = contacts(
                noted.map(AttemptNoted::contacts).orElse(null),
                book.aloft(attempt).filter(a -> a.caughtMs() != null).isPresent());
        cells.put(
                COUNTS,
                book.judged(attempt)
                        .filter(j -> j.decidesOfContact(contacts) || contacts == 0)
                        .map(j -> j.reason() == null ? "yes" : "no")
                        .orElse(contacts > 0 ? "undecided" : ""));
        book.aloft(attempt)
                .ifPresent(a -> cells.put("caught at", Numbers.time(a.caughtMs()))
                        .put("free again", Numbers.time(a.freedMs()))
                        .put("caught by", a.caughtBy())
                        .put("still held", a.stillHeld() ? "yes" : "")
                        .put("steered", a.wasSteered() ? a.steered() : ""));
        book.quiet(attempt)
                .ifPresent(
                        q -> cells.put("quiet from", book.moment(q.fromMs())).put("quiet to", book.moment(q.toMs())));
    }
}
