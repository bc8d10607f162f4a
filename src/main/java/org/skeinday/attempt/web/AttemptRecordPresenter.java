package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptAct;
import org.skeinday.attempt.AttemptActs;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.AttemptPhase;
import org.skeinday.attempt.AttemptReopened;
import org.skeinday.attempt.AttemptSigned;
import org.skeinday.attempt.AttemptVerdict;
import org.skeinday.attempt.Hands;
import org.skeinday.attempt.JudgedReadings;
import org.skeinday.attempt.LateReadings;
import org.skeinday.attempt.LiveAttempt;
import org.skeinday.attempt.PhaseWords;
import org.skeinday.attempt.Protest;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.Signatures;
import org.skeinday.attempt.Timed;
import org.skeinday.attempt.WatchJudged;
import org.skeinday.attempt.WatchMark;
import org.skeinday.attempt.WatchVerdict;
import org.skeinday.attempt.action.ResultActions;
import org.skeinday.attempt.action.SaidMeanwhile;
import org.skeinday.attempt.action.TimeDoubts;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.attempt.store.ResultRecord;
import org.skeinday.attempt.store.WatchStore;
import org.skeinday.contest.DayKind;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.contest.store.FlightRulesStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Role;
import org.skeinday.timing.ReleaseVerdict;
import org.skeinday.units.FlightTime;

/** Makes the record of one attempt. */
final class AttemptRecordPresenter {
    private final Tx tx;
    private final AttemptNow attempt;
    private final LiveAttempt live;
    private final EventAdded event;
    private final UnaryOperator<String> nameOf;
    private final ZoneId zone;
    private final long nowMs;

    AttemptRecordPresenter(Tx tx, AttemptNow attempt, UnaryOperator<String> nameOf, ZoneId zone, long nowMs) {
        this.nowMs = nowMs;
        this.tx = tx;
        this.attempt = attempt;
        this.live = LiveAttempts.find(tx, attempt.id()).orElseThrow();
        this.event = EventStore.find(tx, attempt.eventId()).orElseThrow();
        this.nameOf = nameOf;
        this.zone = zone;
    }

    RecordView view(Caller caller, FormErrors form) {
        boolean quiet = AttemptStore.quietOf(tx, attempt.id()).isPresent();
        boolean captain = caller.role().covers(Role.CAPTAIN);
        boolean closed = is(AttemptPhase.Name.OFFICIAL);
        boolean untold = quiet
                || WatchesTold.of(tx, live, event, Optional.empty(), captain).hidden();
        boolean signs = closed && event.dayKind() == DayKind.HOSTING;
        List<Protest> protests = ResultRecord.protests(tx).getOrDefault(attempt.id(), List.of());
        Long official = attempt.officialMs();
        int types = caller.role().covers(Role.TIMEKEEPER)
                        && AttemptActs.of(live, Hands.TIMEKEEPER).contains(AttemptAct.TYPE_TIME)
                ? event.timekeepers()
                : 0;
        return new RecordView(
                attempt.id(),
                EntryStore.find(tx, attempt.entryId()).orElseThrow().name() + ", "
                        + attempt.number().words(),
                event.name() + ", " + event.day(),
                PageWords.cell(live, event),
                Strips.of(live),
                lines(quiet, untold),
                untold ? List.of() : readings(),
                untold ? List.of() : marks(),
                times(),
                signs ? signs(ResultRecord.signatures(tx, attempt.id()), caller) : List.of(),
                protests.stream().map(this::marked).toList(),
                caller.role().covers(Role.TIMEKEEPER)
                        && AttemptActs.of(live, Hands.TIMEKEEPER).contains(AttemptAct.PROTEST),
                captain,
                captain && (closed || (is(AttemptPhase.Name.VOID) && attempt.releasedAtMs() != null)),
                official == null ? -1 : official,
                types,
                SaidMeanwhile.seenWatches(tx, attempt.id(), types),
                live.isCaught() && FlightRulesStore.of(tx, event.id()).hold().isPresent(),
                FlownMotor.shown(tx, live, captain),
                ResultActions.until(tx, event, attempt).orElse(0L),
                form);
    }

    private List<NowView.Line> lines(boolean quiet, boolean untold) {
        List<NowView.Line> lines = new ArrayList<>();
        @Nullable String how = attempt.how();
        @Nullable String reason = attempt.voidReason();
        if (how != null) {
            lines.add(new NowView.Line("how it came about", how));
        }
        if (reason != null) {
            lines.add(new NowView.Line(
                    PhaseWords.of(live), reason + (attempt.flownAgain() ? "; it uses up no attempt" : "")));
        }
        lines.add(new NowView.Line("called", moment(attempt.calledAtMs())));
        EntryStore.find(tx, attempt.entryId()).filter(EntryAdded::own).ifPresent(entry -> lines.addAll(people(entry)));
        lines.addAll(FlownMotor.lines(tx, attempt, nameOf, zone));
        WindPlaces places = WindPlaces.of(tx, attempt);
        if (!places.differ()) {
            WindingPlaces.line(tx, live).ifPresent(lines::add);
        }
        lines.addAll(GateWords.earlier(tx, attempt, nameOf, zone));
        lines.addAll(GateWords.passes(tx, attempt, nameOf));
        lines.addAll(WindsTold.of(tx, attempt.id(), zone, places));
        lines.addAll(WatchWords.allowed(tx, attempt.id()));
        lines.add(new NowView.Line("released", moment(attempt.releasedAtMs())));
        if (!untold) {
            lines.add(new NowView.Line("landed", moment(attempt.landedAtMs())));
            window().ifPresent(words -> lines.add(new NowView.Line("window", words)));
        } else {
            lines.add(new NowView.Line(
                    "readings",
                    quiet
                            ? "not told to anybody until this attempt is closed"
                            : "told once each watch has its own time"));
        }
        lines.addAll(new RecordDecisions(tx, attempt, nameOf, zone).lines());
        if (!attempt.aloft().words().isEmpty()) {
            lines.add(new NowView.Line(
                    "aloft",
                    attempt.aloft().words() + ". By the rules "
                            + said(AttemptVerdict::caught)
                                    .orElseGet(() ->
                                            FlightRulesStore.of(tx, event.id()).caughtWords())));
        }
        ResultRecord.collision(tx, attempt.id())
                .ifPresent(c -> lines.add(new NowView.Line(
                        "collision",
                        "told at " + moment(c.toldAtMs()) + ". "
                                + said(AttemptVerdict::collision)
                                        .orElseGet(() -> c.at(nowMs, FlightRulesStore.of(tx, event.id()))
                                                .words()))));
        return lines;
    }

    /** What was judged once stays, whatever became of windows and rules. */
    private Optional<String> window() {
        return attempt.verdict() == null
                ? TimeDoubts.of(tx, attempt, event).verdict().map(ReleaseVerdict::words)
                : said(AttemptVerdict::window);
    }

    private Optional<String> said(Function<AttemptVerdict, @Nullable String> what) {
        return Optional.ofNullable(attempt.verdict()).map(what);
    }

    /** Once it is flown or given up, a plan or an entry that is changed later must not rewrite who did what. */
    private List<NowView.Line> people(EntryAdded entry) {
        WhoDoesWhat who = WhoDoesWhat.of(tx, entry, attempt.number(), nameOf);
        return live.isToFly() ? who.lines() : who.then();
    }

    private List<NowView.Line> readings() {
        List<ReadingTaken> all = WatchStore.allReadings(tx, attempt.id());
        List<ReadingTaken> before = WatchStore.readings(tx, attempt.id()).stream()
                .filter(r -> !cameLate(r))
                .toList();
        Timed timed = new Timed(before, WatchStore.judged(tx, attempt.id()), WatchStore.marks(tx, attempt.id()));
        List<String> counting = org.skeinday.attempt.Readings.thatCount(timed).stream()
                .map(ReadingTaken::id)
                .toList();
        Map<Integer, WatchJudged> chosen = WatchStore.judged(tx, attempt.id()).stream()
                .filter(word -> word.readingId() != null)
                .collect(Collectors.toMap(WatchJudged::slot, word -> word, (earlier, later) -> later));
        return all.stream()
                .map(r -> new NowView.Line(
                        "watch " + r.slot() + by(r.personId()) + (r.instrument().equals("watch") ? ", hand watch" : ""),
                        new FlightTime(r.durationMs()).text(2)
                                + (r.isPartial() ? ", partial: taken over in the air" : "")
                                + (cameLate(r)
                                        ? " – came in after the closing"
                                        : aside(r, timed)
                                                .orElse(
                                                        counting.contains(r.id())
                                                                ? ""
                                                                : notCounting(r, chosen.get(r.slot()))))))
                .toList();
    }

    /** What the captain has said against this reading; empty for nothing, and where it was corrected. */
    private static Optional<String> aside(ReadingTaken reading, Timed timed) {
        return timed.readings().contains(reading) && JudgedReadings.isAside(reading, timed)
                ? JudgedReadings.word(reading, timed)
                        .map(word -> (word.says() == WatchVerdict.FAILED
                                        ? " – its watch failed, says the captain: "
                                        : " – left out by the captain: ")
                                + word.reason())
                : Optional.empty();
    }

    /** @param word by which another of its watch was chosen; null where nobody chose */
    private String notCounting(ReadingTaken reading, @Nullable WatchJudged word) {
        return word == null || reading.id().equals(word.readingId())
                ? " – corrected or taken back"
                : " – corrected, or another was chosen" + by(word.personId()) + ": " + word.reason();
    }

    private boolean is(AttemptPhase.Name name) {
        return live.phase().name() == name;
    }

    private boolean cameLate(ReadingTaken reading) {
        return LateReadings.isLate(reading, attempt);
    }

    private List<NowView.Line> marks() {
        return WatchStore.marked(tx, attempt.id()).stream()
                .filter(m -> !m.is(WatchMark.READY))
                .map(m -> new NowView.Line("watch " + m.slot() + ", " + moment(m.atMs()), PageWords.mark(m)))
                .toList();
    }

    private List<NowView.Line> times() {
        List<NowView.Line> times = new ArrayList<>();
        List<AttemptReopened> opened = ResultRecord.reopenings(tx, attempt.id());
        List<AttemptClosed> results = ResultRecord.results(tx, attempt.id());
        for (int i = 0; i < Math.max(results.size(), opened.size()); i++) {
            if (i < results.size()) {
                AttemptClosed r = results.get(i);
                times.add(new NowView.Line(
                        moment(r.atMs()) + by(r.personId()),
                        PageWords.time(r.officialMs(), event) + (r.how().isEmpty() ? "" : ": " + r.how())));
            }
            if (i < opened.size()) {
                AttemptReopened o = opened.get(i);
                times.add(new NowView.Line(moment(o.atMs()) + by(o.personId()), "opened again: " + o.reason()));
            }
        }
        return times;
    }

    private List<RecordView.Sign> signs(Signatures signatures, Caller caller) {
        List<String> own = WatchStore.everWatched(tx, attempt.id(), caller.device()).stream()
                .map(w -> AttemptSigned.watch(w.slot()))
                .toList();
        boolean captain = caller.role().covers(Role.CAPTAIN);
        return signatures.needed().stream()
                .map(signer -> {
                    Optional<AttemptSigned> given = signatures.given().stream()
                            .filter(s -> s.signedAs().equals(signer.as()))
                            .findFirst();
                    boolean pin = !own.contains(signer.as());
                    return new RecordView.Sign(
                            signer.as(),
                            signer.words(),
                            given.map(s -> "signed at " + moment(s.atMs()) + by(s.personId()))
                                    .orElse(""),
                            captain || !pin,
                            pin);
                })
                .toList();
    }

    private RecordView.Marked marked(Protest p) {
        return new RecordView.Marked(
                p.id(),
                moment(p.atMs()) + by(p.personId()) + ": " + p.words()
                        + (p.late() ? " (after the time to protest)" : ""),
                p.settled() == null ? "" : moment(p.settledAtMs()) + ": " + p.settled());
    }

    private String by(@Nullable String person) {
        return person == null || person.isEmpty() ? "" : ", " + nameOf.apply(person);
    }

    private String moment(@Nullable Long ms) {
        return ms == null ? "–" : PageWords.second(ms, zone);
    }
}
