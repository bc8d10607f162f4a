package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_AIM;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_JUDGED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_LATER_USES;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_NOTE;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_QUIET;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_READING;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_RESULT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_WATCH_MARK;
import static org.skeinday.platform.db.schema.Tables.PRACTICE_FLIGHT;

import java.util.ArrayList;
import java.util.List;
import org.jooq.TableField;
import org.jooq.impl.DSL;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.AttemptAimed;
import org.skeinday.attempt.AttemptCalled;
import org.skeinday.attempt.AttemptClosed;
import org.skeinday.attempt.AttemptFlewIn;
import org.skeinday.attempt.AttemptGivenUp;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptMoved;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.AttemptTakenBack;
import org.skeinday.attempt.AttemptVerdict;
import org.skeinday.attempt.AttemptWound;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.LaterUses;
import org.skeinday.attempt.MotorTaken;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.Quiet;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.State;
import org.skeinday.attempt.WatchMark;
import org.skeinday.contest.store.WindowStore;
import org.skeinday.platform.db.Rows;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptRecord;
import org.skeinday.platform.record.FactKind;

/** The attempt's kinds of fact. */
public final class AttemptFacts {
    private AttemptFacts() {}

    public static List<FactKind> kinds() {
        List<FactKind> kinds = new ArrayList<>(ResultRecord.kinds());
        kinds.addAll(BreakRecord.kinds());
        kinds.addAll(MotorCorrections.kinds());
        kinds.addAll(Assignments.kinds());
        kinds.addAll(HallStops.kinds());
        kinds.addAll(PrintedCards.kinds());
        kinds.addAll(Stations.kinds());
        kinds.addAll(WatchFacts.kinds());
        kinds.addAll(ResultVersions.kinds());
        kinds.addAll(TimesDecided.kinds());
        kinds.addAll(List.of(
                FactKind.of("attempt.called", AttemptCalled.class, AttemptFacts::called),
                FactKind.of("attempt.moved", AttemptMoved.class, AttemptFacts::moved),
                FactKind.of("attempt.flew-in", AttemptFlewIn.class, AttemptFacts::flewIn),
                FactKind.of("attempt.closed", AttemptClosed.class, AttemptFacts::closed),
                FactKind.of("attempt.given-up", AttemptGivenUp.class, AttemptFacts::givenUp),
                FactKind.of("attempt.verdict", AttemptVerdict.class, VerdictStore::judged),
                FactKind.of("attempt.taken-back", AttemptTakenBack.class, AttemptFacts::takenBack),
                FactKind.of("attempt.reading", ReadingTaken.class, Rows.into(ATTEMPT_READING)),
                FactKind.of("attempt.imported", AttemptImported.class, AttemptFacts::imported),
                FactKind.of("attempt.wound", AttemptWound.class, AttemptFacts::wound),
                FactKind.of("attempt.noted", AttemptNoted.class, Rows.put(ATTEMPT_NOTE)),
                FactKind.of("attempt.aimed", AttemptAimed.class, Rows.put(ATTEMPT_AIM)),
                FactKind.of("attempt.aloft", Aloft.class, AttemptFacts::aloft),
                FactKind.of("attempt.judged", FlightJudged.class, Rows.put(ATTEMPT_JUDGED)),
                FactKind.of("attempt.motor", MotorTaken.class, AttemptFacts::motorTaken),
                FactKind.of("quiet.began", Quiet.class, Rows.put(ATTEMPT_QUIET)),
                FactKind.of("quiet.ended", Quiet.class, Rows.put(ATTEMPT_QUIET)),
                FactKind.of("flight.flown", PracticeFlown.class, Rows.into(PRACTICE_FLIGHT)),
                FactKind.of("flight.later-uses", LaterUses.class, Rows.put(ATTEMPT_LATER_USES)),
                FactKind.of("flight.changed", PracticeFlown.class, Rows.change(PRACTICE_FLIGHT))));
        return List.copyOf(kinds);
    }

    private static void aloft(Tx tx, Aloft fact) {
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.CAUGHT_MS, fact.caughtMs())
                .set(ATTEMPT.FREED_MS, fact.freedMs())
                .set(ATTEMPT.CAUGHT_BY, fact.caughtBy())
                .set(ATTEMPT.STILL_HELD, fact.stillHeld())
                .set(ATTEMPT.STEERED, fact.steered())
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    private static void takenBack(Tx tx, AttemptTakenBack fact) {
        boolean flies = State.of(fact.state()) == State.RELEASED;
        if (!flies) {
            neverFlew(tx, fact.attemptId());
        }
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.STATE, fact.state())
                .set(ATTEMPT.RELEASED_AT_MS, flies ? ATTEMPT.RELEASED_AT_MS : DSL.castNull(ATTEMPT.RELEASED_AT_MS))
                .setNull(ATTEMPT.LANDED_AT_MS)
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    /** Nothing that was pressed of a flight that was none is spoken of any more; who is ready stays so. */
    private static void neverFlew(Tx tx, String attempt) {
        aloft(tx, Aloft.free(attempt));
        tx.sql()
                .update(ATTEMPT_WATCH_MARK)
                .set(ATTEMPT_WATCH_MARK.STALE, true)
                .where(ATTEMPT_WATCH_MARK.ATTEMPT_ID.eq(attempt))
                .and(ATTEMPT_WATCH_MARK.WHAT.ne(WatchMark.READY.word()))
                .execute();
        tx.sql()
                .update(ATTEMPT_READING)
                .set(ATTEMPT_READING.TAKEN_BACK, true)
                .where(ATTEMPT_READING.ATTEMPT_ID.eq(attempt))
                .execute();
    }

    private static void called(Tx tx, AttemptCalled fact) {
        var row = tx.sql().newRecord(ATTEMPT, fact);
        row.setState(State.CALLED.word());
        row.insert();
    }

    private static void imported(Tx tx, AttemptImported fact) {
        var row = tx.sql().newRecord(ATTEMPT, fact);
        row.setFlownAgain(Boolean.TRUE.equals(fact.flownAgain()));
        row.insert();
        Long official = fact.officialMs();
        if (official != null) { // how it came about follows in a fact of its own, where the file says so
            Long closed = fact.closedAtMs();
            Rows.put(ATTEMPT_RESULT)
                    .accept(tx, new AttemptClosed(fact.id(), closed == null ? 0 : closed, official, "", null, null));
        }
    }

    private static void moved(Tx tx, AttemptMoved fact) {
        Rows.set(
                tx,
                ATTEMPT.ID,
                fact.attemptId(),
                new Rows.Value<>(ATTEMPT.STATE, fact.state()),
                new Rows.Value<>(timeOf(State.of(fact.state())), fact.atMs()));
        if (State.of(fact.state()) == State.RELEASED) {
            keepWindow(tx, fact.attemptId());
        }
    }

    private static void flewIn(Tx tx, AttemptFlewIn fact) {
        Long opens = fact.opensMs();
        Long closes = fact.closesMs();
        Rows.set(
                tx,
                ATTEMPT.ID,
                fact.attemptId(),
                new Rows.Value<>(ATTEMPT.WINDOW_OPENS_MS, opens == null ? 0 : opens),
                new Rows.Value<>(ATTEMPT.WINDOW_CLOSES_MS, closes == null ? 0 : closes));
    }

    /** What records made before {@code attempt.flew-in} go by: the windows of that moment. */
    private static void keepWindow(Tx tx, String attempt) {
        AttemptStore.find(tx, attempt)
                .flatMap(now -> WindowStore.of(tx, now.eventId(), now.entryId()))
                .ifPresent(window -> Rows.set(
                        tx,
                        ATTEMPT.ID,
                        attempt,
                        new Rows.Value<>(ATTEMPT.WINDOW_OPENS_MS, window.opensAtMs()),
                        new Rows.Value<>(ATTEMPT.WINDOW_CLOSES_MS, window.closesAtMs())));
    }

    private static TableField<AttemptRecord, Long> timeOf(State state) {
        return switch (state) {
            case CALLED -> ATTEMPT.CALLED_AT_MS;
            case WINDING -> ATTEMPT.WINDING_AT_MS;
            case HOLDING -> ATTEMPT.HOLDING_AT_MS;
            case RELEASED -> ATTEMPT.RELEASED_AT_MS;
            case LANDED -> ATTEMPT.LANDED_AT_MS;
            case PLANNED, CLOSED, SCRUBBED, VOID -> ATTEMPT.CLOSED_AT_MS;
        };
    }

    private static void motorTaken(Tx tx, MotorTaken fact) {
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.MOTOR_ID, fact.motorId())
                .set(ATTEMPT.STATE, State.CALLED.word())
                .setNull(ATTEMPT.WINDING_AT_MS)
                .setNull(ATTEMPT.HOLDING_AT_MS)
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    /** The time that holds, and one more of those that there ever were. */
    private static void closed(Tx tx, AttemptClosed fact) {
        Rows.put(ATTEMPT_RESULT).accept(tx, fact);
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.STATE, State.CLOSED.word())
                .set(ATTEMPT.CLOSED_AT_MS, fact.atMs())
                .set(ATTEMPT.OFFICIAL_MS, fact.officialMs())
                .set(ATTEMPT.HOW, fact.how())
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    private static void wound(Tx tx, AttemptWound fact) {
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.STOP_COUNT_CRANK_TURNS, fact.stopCountCrankTurns())
                .set(ATTEMPT.LAUNCH_TORQUE_NMM, fact.launchTorqueNmm())
                .set(ATTEMPT.LAUNCH_TORQUE_TYPED, fact.launchTorqueTyped())
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    private static void givenUp(Tx tx, AttemptGivenUp fact) {
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.STATE, fact.state())
                .set(ATTEMPT.CLOSED_AT_MS, fact.atMs())
                .set(ATTEMPT.VOID_REASON, fact.reason())
                .set(ATTEMPT.FLOWN_AGAIN, Boolean.TRUE.equals(fact.flownAgain()))
                .set(ATTEMPT.TURNS_ON, Boolean.TRUE.equals(fact.turnsOn()))
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }
}
