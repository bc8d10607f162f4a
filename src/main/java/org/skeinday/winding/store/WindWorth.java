package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.WINDING_CONFIRMED;
import static org.skeinday.platform.db.schema.Tables.WINDING_JUDGED;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ToldOfBreak;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.WhatCounts;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.motor.MotorStep;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.Doubt;
import org.skeinday.winding.MarkDoubts;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindJudged;

/** What winds and breaks are worth as evidence: their turns, what was read of them, and what is still asked. */
public final class WindWorth {
    private final KnownBounds bounds;
    private final Map<String, ValueMarks> marks;
    private final Map<String, List<String>> confirmed;
    private final Map<String, WindJudged> judged;

    /** Six queries, however many winds are asked about. */
    public WindWorth(Tx tx) {
        bounds = new KnownBounds(tx);
        marks = EvidenceStore.byFlight(tx);
        confirmed = tx.sql()
                .select(WINDING_CONFIRMED.WIND_ID, WINDING_CONFIRMED.MARK_ID)
                .from(WINDING_CONFIRMED)
                .fetchGroups(WINDING_CONFIRMED.WIND_ID, WINDING_CONFIRMED.MARK_ID);
        judged = tx.sql().selectFrom(WINDING_JUDGED).fetchMap(WINDING_JUDGED.WIND_ID, WindJudged.class);
    }

    /** Whether its turns enter fits. */
    public Counts turns(Wind wind) {
        return WhatCounts.turnsOfWind(
                wind.counted() != null,
                wind.paced(),
                leftOut(wind),
                count(wind).map(Doubted::words).orElse(""));
    }

    /** Whether what was read of it enters fits, too. */
    public Counts readings(Wind wind) {
        return WhatCounts.readingsOfWind(turns(wind), openReadings(wind).size());
    }

    /** Why a person left it out; empty when nobody did. */
    public String leftOut(Wind wind) {
        WindJudged word = judged.get(wind.begun().id());
        return word == null || word.reason() == null ? "" : word.reason();
    }

    /** What is unlikely of its count, as long as nobody has confirmed it, of the wind or of its flight. */
    public Optional<Doubted> count(Wind wind) {
        return wind.told(bounds.breakingTurns(wind.begun().motorId())).doubts().stream()
                .filter(doubt -> doubt.about() == Measured.CRANK_TURNS)
                .filter(doubt -> !isConfirmed(wind.begun().id(), wind)
                        && !isConfirmed(wind.begun().attemptId(), wind))
                .findFirst();
    }

    private boolean isConfirmed(@Nullable String of, Wind wind) {
        return wind.counted() != null
                && marks.getOrDefault(String.valueOf(of), ValueMarks.NONE).isConfirmed(Measured.CRANK_TURNS, (double)
                        wind.counted().stopCrankTurns());
    }

    /**
     * Readings that are still asked about, without those that need the batch's other winds: those would be held against
     * winds that are held against this one.
     */
    public List<Doubt> openReadings(Wind wind) {
        Set<String> known = new HashSet<>(confirmed.getOrDefault(wind.begun().id(), List.of()));
        return MarkDoubts.of(wind, Optional.empty()).stream()
                .filter(doubt -> !known.contains(doubt.markId()))
                .toList();
    }

    /** What was told of a break without a wind. */
    public ToldOfBreak told(MotorStep broke) {
        return new ToldOfBreak(
                broke.motorTurns(),
                broke.torqueNmm(),
                bounds.scale(broke.meter()),
                bounds.breakingTurns(broke.motorId()));
    }

    /** What is still asked about a break that nobody read. */
    public MotorBreak.Asked asked(MotorStep broke) {
        ToldOfBreak told = told(broke);
        ValueMarks of = marks.getOrDefault(broke.id(), ValueMarks.NONE);
        return new MotorBreak.Asked(told.open(Measured.CRANK_TURNS, of), told.open(Measured.PEAK_TORQUE, of), false);
    }

    /** What keeps a break out of fits whose wind was read; that nobody has counted yet, its turns say themselves. */
    public MotorBreak.Asked asked(Wind wind) {
        Counts turns = turns(wind);
        boolean counted = wind.counted() != null && !wind.paced();
        List<Doubt> open = openReadings(wind);
        return new MotorBreak.Asked(
                counted && !turns.isYes() ? turns.words() : "",
                !leftOut(wind).isEmpty()
                        ? turns.words()
                        : open.isEmpty()
                                ? ""
                                : WhatCounts.readingsOfWind(Counts.yes(), open.size())
                                        .words(),
                true);
    }
}
