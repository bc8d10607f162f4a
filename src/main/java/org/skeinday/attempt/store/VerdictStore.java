package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;

import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptVerdict;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.AttemptRecord;
import org.skeinday.standing.FlightsRule;

/** What was judged of a flight when it was decided, beside the attempt. */
final class VerdictStore {
    private VerdictStore() {}

    static void judged(Tx tx, AttemptVerdict fact) {
        tx.sql()
                .update(ATTEMPT)
                .set(ATTEMPT.JUDGED_WINDOW, fact.window())
                .set(ATTEMPT.JUDGED_CAUGHT, fact.caught())
                .set(ATTEMPT.JUDGED_COLLISION, fact.collision())
                .set(ATTEMPT.JUDGED_FLIGHTS, fact.flights())
                .set(ATTEMPT.JUDGED_MINIMUM_MS, fact.minimumMs())
                .set(ATTEMPT.JUDGED_REPEATS_PER_FLIGHT, fact.repeatsPerFlight())
                .set(ATTEMPT.JUDGED_REPEATS_IN_ALL, fact.repeatsInAll())
                .set(ATTEMPT.JUDGED_IF_SHORT, fact.ifShort())
                .where(ATTEMPT.ID.eq(fact.attemptId()))
                .execute();
    }

    /** What is opened again is judged anew. */
    static void forget(Tx tx, String attempt) {
        tx.sql()
                .update(ATTEMPT)
                .setNull(ATTEMPT.JUDGED_WINDOW)
                .setNull(ATTEMPT.JUDGED_CAUGHT)
                .setNull(ATTEMPT.JUDGED_COLLISION)
                .setNull(ATTEMPT.JUDGED_FLIGHTS)
                .where(ATTEMPT.ID.eq(attempt))
                .execute();
    }

    /** Null for what is not decided, and in records made before this was kept. */
    static @Nullable AttemptVerdict value(AttemptRecord r) {
        Integer flights = r.getJudgedFlights();
        return flights == null
                ? null
                : new AttemptVerdict(
                        r.getId(),
                        r.getJudgedWindow(),
                        r.getJudgedCaught(),
                        r.getJudgedCollision(),
                        flights,
                        r.getJudgedMinimumMs(),
                        r.getJudgedRepeatsPerFlight(),
                        r.getJudgedRepeatsInAll(),
                        r.getJudgedIfShort());
    }

    /** The rule by which the flight counts; null as above. */
    static @Nullable FlightsRule rule(AttemptRecord r) {
        AttemptVerdict verdict = value(r);
        return verdict == null ? null : verdict.rule();
    }
}
