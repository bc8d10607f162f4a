package org.skeinday.contest;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Preconditions;
import org.skeinday.units.TorqueUnit;
import org.skeinday.units.UnitSystem;

/**
 * Fact {@code station.added}: a winding place with its winder, meter and scale.
 *
 * @param mount table (clamped), post (weighted) or held (by a person: not advised)
 * @param pullTestN what the mount has held in the pull test, newtons
 * @param pullTested ISO date
 * @param winderRatio motor turns to one crank turn as verified, null when not
 * @param ratioChecked ISO date of one marked crank turn
 * @param counter none, crank or motor turns
 * @param countsBack whether the counter runs backwards with the crank
 * @param zeroNmm what the meter shows unloaded, as typed in {@code zeroTyped}
 * @param span known torque and reading of at least three points, as {@link Span} writes them
 * @param calibrated ISO date
 * @param knownMassG a mass that is known, as typed in {@code knownMassTyped}
 * @param divisionNmm torque from one mark of the meter to the next, as typed in {@code divisionTyped}
 * @param fullScaleNmm where its scale ends, as typed in {@code fullScaleTyped}
 * @param outputTurns with or against its crank, as seen at the hook; null while nobody looked
 * @param outputChecked ISO date of one marked crank turn that showed it
 * @param outputCheckedBy id of the person who watched the hook; null where nobody is named
 * @param scaleReadsG what the scale shows for it, as typed in {@code scaleReadsTyped}
 */
public record StationAdded(
        String id,
        String name,
        String mount,
        @Nullable Double pullTestN,
        @Nullable String pullTested,
        @Nullable Double winderRatio,
        @Nullable String ratioChecked,
        String counter,
        boolean countsBack,
        @Nullable String meter,
        @Nullable Double zeroNmm,
        @Nullable String zeroTyped,
        @Nullable String span,
        @Nullable String calibrated,
        @Nullable Double knownMassG,
        @Nullable String knownMassTyped,
        @Nullable Double scaleReadsG,
        @Nullable String scaleReadsTyped,
        @Nullable Double divisionNmm,
        @Nullable String divisionTyped,
        @Nullable Double fullScaleNmm,
        @Nullable String fullScaleTyped,
        @Nullable String outputTurns,
        @Nullable String outputChecked,
        @Nullable String outputCheckedBy) {
    public static final List<String> MOUNTS = List.of("table", "post", "held");
    public static final List<String> COUNTERS = List.of("none", "crank", "motor");

    public StationAdded {
        Preconditions.filled("The winding place's name", name);
        Preconditions.oneOf("The mount", mount, MOUNTS);
        if (divisionNmm != null && fullScaleNmm != null && fullScaleNmm < divisionNmm) {
            throw new IllegalArgumentException("The meter's full scale must not be below one division, but was "
                    + fullScaleTyped + " with a division of " + divisionTyped);
        }
        Preconditions.oneOf("The counter", counter, COUNTERS);
        if (outputTurns != null) {
            Preconditions.oneOf("The way that the hook turns for the crank", outputTurns, WinderOutput.WORDS);
        } else if (outputChecked != null || outputCheckedBy != null) {
            throw new IllegalArgumentException(
                    "Whoever watched the hook must say which way it turned: with or against the"
                            + " crank, but nothing is said");
        }
    }

    /** The team's lengths, with torques as the meter of this place shows them. */
    public UnitSystem units(UnitSystem team) {
        return Optional.ofNullable(divisionTyped)
                .or(() -> Optional.ofNullable(fullScaleTyped))
                .flatMap(TorqueUnit::ofTyped)
                .map(team::with)
                .orElse(team);
    }

    /** The same once its mount was pulled. @param day ISO date */
    public StationAdded pulled(double newtons, String day) {
        return tested(newtons, day, ratioChecked);
    }

    /** The same once one marked crank turn showed its ratio to be right. @param day ISO date */
    public StationAdded ratioChecked(String day) {
        return tested(pullTestN, pullTested, day);
    }

    /** Which way its hook turns for the crank; empty while nobody has seen one marked turn of it. */
    public Optional<WinderOutput> output() {
        return outputChecked == null
                ? Optional.empty()
                : Optional.ofNullable(outputTurns).map(WinderOutput::of);
    }

    /** The same once somebody watched the hook over one marked turn. @param day ISO date @param person null for nobody named */
    public StationAdded outputSeen(WinderOutput turns, String day, @Nullable String person) {
        return with(pullTestN, pullTested, ratioChecked, turns.word(), day, person);
    }

    /** The same place as it was at another time. @param then what was noted of it then */
    public StationAdded as(Then then) {
        boolean sameHook = Objects.equals(then.outputTurns(), outputTurns);
        return new StationAdded(
                id,
                then.name(),
                mount,
                pullTestN,
                pullTested,
                then.winderRatio(),
                ratioChecked,
                counter,
                countsBack,
                then.meter(),
                zeroNmm,
                zeroTyped,
                span,
                calibrated,
                knownMassG,
                knownMassTyped,
                scaleReadsG,
                scaleReadsTyped,
                then.divisionNmm(),
                then.divisionTyped(),
                then.fullScaleNmm(),
                then.fullScaleTyped(),
                then.outputTurns(),
                sameHook ? outputChecked : null,
                sameHook ? outputCheckedBy : null);
    }

    /** What a wind rests on of its place: how it was called, its meter and its winder; in the same words and units as here. */
    public record Then(
            String name,
            @Nullable String meter,
            @Nullable Double divisionNmm,
            @Nullable String divisionTyped,
            @Nullable Double fullScaleNmm,
            @Nullable String fullScaleTyped,
            @Nullable Double winderRatio,
            @Nullable String outputTurns) {
        /** Of a place that is prepared no more. @param id any, where it is not known */
        public StationAdded alone(String id) {
            return new StationAdded(
                    id,
                    name,
                    MOUNTS.get(0),
                    null,
                    null,
                    winderRatio,
                    null,
                    COUNTERS.get(0),
                    false,
                    meter,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    divisionNmm,
                    divisionTyped,
                    fullScaleNmm,
                    fullScaleTyped,
                    outputTurns,
                    null,
                    null);
        }
    }

    private StationAdded tested(@Nullable Double newtons, @Nullable String pulled, @Nullable String checked) {
        return with(newtons, pulled, checked, outputTurns, outputChecked, outputCheckedBy);
    }

    private StationAdded with(
            @Nullable Double newtons,
            @Nullable String pulled,
            @Nullable String checked,
            @Nullable String turns,
            @Nullable String seen,
            @Nullable String seenBy) {
        return new StationAdded(
                id,
                name,
                mount,
                newtons,
                pulled,
                winderRatio,
                checked,
                counter,
                countsBack,
                meter,
                zeroNmm,
                zeroTyped,
                span,
                calibrated,
                knownMassG,
                knownMassTyped,
                scaleReadsG,
                scaleReadsTyped,
                divisionNmm,
                divisionTyped,
                fullScaleNmm,
                fullScaleTyped,
                turns,
                seen,
                seenBy);
    }
}
