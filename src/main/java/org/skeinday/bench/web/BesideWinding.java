package org.skeinday.bench.web;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aim;
import org.skeinday.attempt.AttemptAimed;
import org.skeinday.attempt.AttemptNow;
import org.skeinday.attempt.action.SaidMeanwhile;
import org.skeinday.attempt.store.AttemptStore;
import org.skeinday.attempt.web.MotorsAtHand;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.motor.BatchBand;
import org.skeinday.motor.HoldBleed;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.units.Length;
import org.skeinday.units.Torque;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.BatchWinds;
import org.skeinday.winding.HoldWords;
import org.skeinday.winding.LaunchAgainstWanted;
import org.skeinday.winding.Wind;
import org.skeinday.winding.store.WindStore;

/** What stands beside a wind: its picture, what is wanted of it, how long it may be held, other motors. */
final class BesideWinding {
    private final Tx tx;
    private final MotorLife life;
    private final @Nullable Wind wind;
    private final UnitSystem units;
    private final Aim aim;
    private @Nullable BatchWinds batch;

    BesideWinding(Tx tx, MotorLife life, @Nullable Wind wind, UnitSystem units, Aim aim) {
        this.tx = tx;
        this.life = life;
        this.wind = wind;
        this.units = units;
        this.aim = aim;
    }

    /** Read when first asked for: a page that only shows keys needs none of it. */
    private BatchWinds batch(Wind now) {
        if (batch == null) {
            String id = life.motor().batchId();
            Map<String, BatchWinds.Size> sizes = MotorStore.all(tx).stream()
                    .filter(m -> m.batchId().equals(id))
                    .collect(Collectors.toMap(MotorAdded::id, BatchWinds.Size::of));
            batch = BatchWinds.before(now, WindStore.evidenceOfBatch(tx, id), sizes);
        }
        return batch;
    }

    /** Of the batch on this meter; empty before there are three winds. */
    Optional<DoubleFunction<Optional<BatchBand.Band>>> band() {
        return wind == null ? Optional.empty() : batch(wind).winding(BatchWinds.Size.of(life.motor()));
    }

    /** What the needle shows at a mark: torque, or the marks while their worth is not known. */
    String needle(Wind now, int level) {
        return now.torque(level).map(units::torque).orElse(level + (level == 1 ? " mark" : " marks"));
    }

    /** Null before the needle has moved. */
    @Nullable
    WindPictureView picture() {
        if (wind == null || wind.crossings().isEmpty()) {
            return null;
        }
        Wind now = wind;
        return Apart.made("The picture of this wind", () -> drawn(now), WindPictureView::none);
    }

    private WindPictureView drawn(Wind now) {
        String peak = needle(now, now.peakLevel().orElse(0));
        String last = needle(now, now.launchLevel().orElse(0));
        return new WindPicture(now, band(), aim.launch(), units)
                .view("Torque of this wind: highest " + peak + ", at last " + last);
    }

    /** What was reached against what was wanted, in words; empty when nothing was, or nobody read the needle. */
    Optional<String> wanted(Wind done) {
        @Nullable Torque launch = aim.launch();
        return launch == null
                ? Optional.empty()
                : Apart.made("What was wanted at launch", () -> reached(done, launch), Optional::of);
    }

    private Optional<String> reached(Wind done, Torque launch) {
        return done.launchTorque()
                .map(reached ->
                        new LaunchAgainstWanted(launch, reached).words() + " (wanted " + units.torque(launch) + ")");
    }

    WindingView.Aims aims(String attempt, FormErrors form) {
        AttemptAimed wanted = AttemptStore.aim(tx, attempt);
        return new WindingView.Aims(
                form.typedOr("launch", wanted.launchTyped() == null ? "" : wanted.launchTyped()),
                form.typedOr("ceiling", wanted.ceilingTyped() == null ? "" : wanted.ceilingTyped()),
                form.typedOr("unit", units.torqueUnitTyped()),
                form.typedOr("unit", units.torqueUnitTyped()).replace('-', '·'),
                SaidMeanwhile.seen(tx, SaidMeanwhile.torques(attempt)),
                form);
    }

    List<WindingView.Spare> spares(AttemptNow attempt) {
        EntryAdded entry = EntryStore.find(tx, attempt.entryId()).orElseThrow();
        return new MotorsAtHand(tx)
                .offers(entry, ModelStore.ofEntry(tx, entry.id())).stream()
                        .filter(offer -> !offer.motor().id().equals(attempt.motorId()))
                        .map(offer -> new WindingView.Spare(
                                offer.motor().id(),
                                offer.motor().tag() + ", "
                                        + units.length(Length.ofMillimetres(
                                                offer.motor().loopMm()))
                                        + offer.forWhom(),
                                offer.isPlanned()))
                        .toList();
    }

    /**
     * Since the last turn: turns that are taken off again do not restart it.
     *
     * @param heldSince by the phase of its attempt, epoch ms; empty while that does not hold, and without an attempt
     */
    WindingView.Hold hold(Optional<Long> heldSince, boolean quiet, long nowMs) {
        Wind now = Objects.requireNonNull(wind);
        boolean held = now.phase() == Wind.Phase.STOPPED
                || now.phase() == Wind.Phase.HOLDING
                || now.phase() == Wind.Phase.OFF_METER;
        if (!held) {
            return new WindingView.Hold(0, "");
        }
        String words = quiet ? "" : Apart.made("How long it may be held", () -> howLong(now), said -> said);
        return new WindingView.Hold(heldSince.or(now::heldSince).orElse(nowMs), words);
    }

    private String howLong(Wind now) {
        return HoldWords.of(
                batch(now).bleed(),
                Optional.ofNullable(aim.launch()),
                now.holdReadings(),
                HoldBleed.DEFAULT_HOLD_SECONDS);
    }
}
