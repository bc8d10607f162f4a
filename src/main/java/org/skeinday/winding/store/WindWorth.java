package org.skeinday.winding.store;

import static org.skeinday.platform.db.schema.Tables.WINDING_CONFIRMED;
import static org.skeinday.platform.db.schema.Tables.WINDING_JUDGED;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.evidence.Counts;
import org.skeinday.evidence.Doubted;
import org.skeinday.evidence.Measured;
import org.skeinday.evidence.ToldOfBreak;
import org.skeinday.evidence.ValueMarked;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.WhatCounts;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.motor.MotorStep;
import org.skeinday.platform.db.Tx;
import org.skeinday.winding.Doubt;
import org.skeinday.winding.HeldDoubts;
import org.skeinday.winding.HeldRead;
import org.skeinday.winding.MarkDoubts;
import org.skeinday.winding.MotorBreak;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindJudged;

/** What winds and breaks are worth as evidence: their turns, what was read of them, and what is still asked. */
public final class WindWorth {
    private static final String ABOVE_BAND = "Marks are far above the band of the batch's other winds";

    private final KnownBounds bounds;
    private final List<ValueMarked> said;
    private final Map<String, ValueMarks> marks;
    private final Map<String, List<String>> confirmed;
    private final Map<String, WindJudged> judged;

    /** Six queries, however many winds are asked about. */
    public WindWorth(Tx tx) {
        bounds = new KnownBounds(tx);
        said = EvidenceStore.all(tx);
        marks = ValueMarks.byFlight(said);
        confirmed = tx.sql()
                .select(WINDING_CONFIRMED.WIND_ID, WINDING_CONFIRMED.MARK_ID)
                .from(WINDING_CONFIRMED)
                .fetchGroups(WINDING_CONFIRMED.WIND_ID, WINDING_CONFIRMED.MARK_ID);
        judged = tx.sql().selectFrom(WINDING_JUDGED).fetchMap(WINDING_JUDGED.WIND_ID, WindJudged.class);
    }

    /** All that was said of numbers of the record. */
    List<ValueMarked> marks() {
        return said;
    }

    /** Every counted wind of which something may be asked, as they were begun. */
    public List<Wind> toAsk(Tx tx) {
        return WindsToAsk.of(tx, bounds.leastTurnsAsked());
    }

    /** Whether its turns enter fits. */
    public Counts turns(Wind wind) {
        return WhatCounts.turnsOfWind(
                wind.counted() != null,
                wind.paced(),
                leftOut(wind),
                offered(wind).contains(Measured.CRANK_TURNS),
                count(wind).map(Doubted::words).orElse(""));
    }

    /** Whether what was read of it enters fits, too. */
    public Counts readings(Wind wind) {
        return WhatCounts.readingsOfWind(
                turns(wind), !offered(wind).isEmpty(), askedReadings(wind).size());
    }

    /** Which of its counts a form only proposed: nobody has confirmed them, of the wind or of its flight. */
    public List<Measured> offered(Wind wind) {
        return CountedTurns.of(wind).entrySet().stream()
                .filter(count -> marks(wind.begun().id()).isOffered(count.getKey(), count.getValue())
                        && !marks(wind.begun().attemptId()).isConfirmed(count.getKey(), count.getValue()))
                .map(Map.Entry::getKey)
                .toList();
    }

    private ValueMarks marks(@Nullable String of) {
        return marks.getOrDefault(String.valueOf(of), ValueMarks.NONE);
    }

    /** What is still asked about its readings, in words; those above the batch's band as they stood when it was counted. */
    public List<String> askedReadings(Wind wind) {
        List<String> words =
                new ArrayList<>(openReadings(wind).stream().map(Doubt::words).toList());
        if (isAboveBand(wind)) {
            words.add(ABOVE_BAND);
        }
        return words;
    }

    /**
     * What keeps its hold out of fits but what follows from its count and the end of the scale, in words; empty when nothing
     * does.
     */
    String besideTheHold(Wind wind) {
        int asked = (int) openReadings(wind).stream()
                .filter(doubt -> doubt.kind() != Doubt.Kind.HELD)
                .count();
        List<Measured> offered = offered(wind);
        Counts turns = WhatCounts.turnsOfWind(
                wind.counted() != null, wind.paced(), leftOut(wind), offered.contains(Measured.CRANK_TURNS), "");
        Counts worth = WhatCounts.readingsOfWind(turns, !offered.isEmpty(), asked + (isAboveBand(wind) ? 1 : 0));
        return worth.isYes() ? "" : leftOut(wind).isEmpty() ? worth.words() : leftOut(wind);
    }

    /** Whether a person said that this reading of the hold was so. */
    boolean isConfirmed(String wind, HeldRead read) {
        return confirmed.getOrDefault(wind, List.of()).contains(HeldDoubts.id(wind, read));
    }

    /** Whether it is asked about marks that were above the batch's band. */
    public boolean isAboveBand(Wind wind) {
        return wind.peakTorque()
                .filter(peak -> marks(wind.begun().id()).isAsked(Measured.PEAK_TORQUE, peak.newtonMillimetres()))
                .isPresent();
    }

    /** Why a person left it out; empty when nobody did. */
    public String leftOut(Wind wind) {
        return leftOut(wind.begun().id());
    }

    String leftOut(String wind) {
        WindJudged word = judged.get(wind);
        return word == null || word.reason() == null ? "" : word.reason();
    }

    /** What is unlikely of its count, as long as nobody has confirmed it, of the wind or of its flight. */
    public Optional<Doubted> count(Wind wind) {
        return wind.turns().told(bounds.breakingTurns(wind.begun().motorId())).doubts().stream()
                .filter(doubt -> doubt.concerns(Measured.CRANK_TURNS))
                .filter(doubt -> confirmedCount(wind).isEmpty())
                .findFirst();
    }

    /** The word of a person that its count was so, of the wind or of its flight. */
    Optional<ValueMarked> confirmedCount(Wind wind) {
        WindCounted counted = wind.counted();
        return counted == null
                ? Optional.empty()
                : Stream.of(wind.begun().id(), String.valueOf(wind.begun().attemptId()))
                        .flatMap(of -> marks(of).of(Measured.CRANK_TURNS, (double) counted.stopCrankTurns()).stream())
                        .filter(ValueMarked::confirmed)
                        .findFirst();
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
        ValueMarks of = marks(broke.id());
        return new MotorBreak.Asked(told.open(Measured.CRANK_TURNS, of), told.open(Measured.PEAK_TORQUE, of), false);
    }

    /** What keeps a break out of fits whose wind was read; that nobody has counted yet, its turns say themselves. */
    public MotorBreak.Asked asked(Wind wind) {
        Counts turns = turns(wind);
        boolean counted = wind.counted() != null && !wind.paced();
        int open = askedReadings(wind).size();
        return new MotorBreak.Asked(
                counted && !turns.isYes() ? turns.words() : "",
                !leftOut(wind).isEmpty()
                        ? turns.words()
                        : open == 0
                                ? ""
                                : WhatCounts.readingsOfWind(Counts.yes(), false, open)
                                        .words(),
                true);
    }
}
