package org.skeinday.review.store;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.skeinday.attempt.AttemptImported;
import org.skeinday.attempt.AttemptNoted;
import org.skeinday.attempt.PracticeFlown;
import org.skeinday.attempt.ReadingTaken;
import org.skeinday.attempt.store.AttemptFacts;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EntryTask;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.store.ContestFacts;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.evidence.store.EvidenceStore;
import org.skeinday.motor.BatchAdded;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.store.MotorFacts;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;
import org.skeinday.platform.record.Json;
import org.skeinday.winding.WindBegun;
import org.skeinday.winding.WindCounted;
import org.skeinday.winding.WindMark;
import org.skeinday.winding.WindPhase;
import org.skeinday.winding.store.WindFacts;

/** A season as facts in tables: events with attempts of one entry each, whose winds were read, and practice. */
public final class RecordedSeason {
    static final long START = Instant.parse("2026-10-03T09:00:00Z").toEpochMilli();
    static final long DAY_MS = 86_400_000;
    private static final int PER_EVENT = 20;

    private final Tx tx;
    private final Map<String, FactKind> kinds = new HashMap<>();
    private final SplittableRandom random;

    public RecordedSeason(Tx tx, long seed) {
        this.tx = tx;
        this.random = new SplittableRandom(seed);
        List<FactKind> all = new ArrayList<>();
        all.addAll(ContestFacts.kinds());
        all.addAll(MotorFacts.kinds());
        all.addAll(WindFacts.kinds());
        all.addAll(AttemptFacts.kinds());
        all.addAll(PlanStore.kinds());
        all.addAll(ReviewFacts.kinds());
        all.addAll(EvidenceStore.kinds());
        all.forEach(k -> kinds.put(k.kind(), k));
    }

    /** One fact into its tables, as the writer would. */
    public void take(String kind, Object fact) {
        FactKind of = kinds.get(kind);
        if (of == null) {
            throw new AssertionError("There is no kind " + kind);
        }
        of.apply().apply(tx, 1, Json.MAPPER.valueToTree(fact));
    }

    /** @param attempts each with a wind that was read, in events of twenty a week apart */
    public void fill(int attempts, int practice) {
        things(6, 10);
        for (int i = 0; i < attempts; i++) {
            if (i % PER_EVENT == 0) {
                event(i / PER_EVENT, "hosting");
            }
            attempt(i, START + i / PER_EVENT * 7 * DAY_MS + i % PER_EVENT * 1_200_000L);
        }
        event(9_999, "practice");
        for (int i = 0; i < practice; i++) {
            practised(i, START + i / 30 * 3 * DAY_MS + i % 30 * 900_000L);
        }
    }

    private void things(int batches, int motors) {
        take("model.added", new ModelAdded("model0", "Reed One", "Reed", "cw", 240, "240 mm", null, null, null));
        take("model.added", new ModelAdded("model1", "Reed Two", "Reed", "cw", 240, "240 mm", null, null, null));
        for (int b = 0; b < batches; b++) {
            take("batch.added", new BatchAdded("batch" + b, "Lot " + b, null, null, null, null, 42.6, "2026-08-01"));
            for (int m = 0; m < motors; m++) {
                String id = "motor" + (b * motors + m);
                take(
                        "motor.added",
                        new MotorAdded(id, id, "batch" + b, "Reed", "cw", 470, "470 mm", 1.6, "1.6 g", null, 1));
            }
        }
    }

    private void event(int k, String kind) {
        String day = LocalDate.ofInstant(Instant.ofEpochMilli(START), ZoneOffset.UTC)
                .plusDays(7L * (k % 1000))
                .toString();
        take(
                "event.added",
                new EventAdded(
                        "event" + k,
                        "Day " + k,
                        kind,
                        day,
                        "Hall",
                        null,
                        null,
                        20,
                        12,
                        "best",
                        1,
                        2,
                        "mean",
                        "mean",
                        100,
                        "down",
                        false,
                        0,
                        10,
                        null,
                        null));
        take("entry.added", new EntryAdded("entry" + k, "event" + k, "Curlew", "Reed", null, true, null));
        take("entry.task", new EntryTask("entry" + k, "winds", "tomek"));
    }

    private void attempt(int i, long at) {
        String id = "attempt" + i;
        String event = String.valueOf(i / PER_EVENT);
        String motor = "motor" + i % 60;
        double launch = 2 + random.nextDouble();
        long ms = Math.round(1000 * (60 + 20 * launch + 3 * random.nextGaussian()));
        long released = at + 300_000;
        take(
                "attempt.imported",
                new AttemptImported(
                        id,
                        "event" + event,
                        "entry" + event,
                        i % PER_EVENT + 1,
                        "model" + i % 2,
                        motor,
                        "closed",
                        at,
                        at + 60_000,
                        released - 40_000,
                        released,
                        released + ms,
                        released + ms + 60_000,
                        210,
                        launch,
                        launch + " N·mm",
                        i % 3 == 0 ? null : (Long) ms,
                        null,
                        null));
        for (int slot = 1; slot <= 2; slot++) {
            take(
                    "attempt.reading",
                    new ReadingTaken(
                            id + "r" + slot, id, slot, "device", null, ms + slot * 70, released, null, null, null));
        }
        take(
                "attempt.noted",
                new AttemptNoted(
                        id, null, launch + 2, "typed", 4.0, 20.0 + random.nextInt(40), null, null, null, null, false));
        wind(i, id, motor, at + 60_000);
    }

    private void wind(int i, String attempt, String motor, long at) {
        String id = "wind" + i;
        take(
                "wind.begun",
                new WindBegun(
                        id,
                        attempt,
                        motor,
                        null,
                        "wire 1",
                        10,
                        0.2,
                        7.0,
                        210,
                        126,
                        4,
                        null,
                        "count",
                        i / 60 + 2,
                        "d",
                        null,
                        at,
                        false));
        long elapsed = 0;
        for (int k = 0; k < 24; k++) {
            elapsed += 6_000 + random.nextInt(1500);
            take("wind.mark", new WindMark(id + "m" + k, id, 1, elapsed, at + elapsed, false, null));
        }
        take("wind.phase", new WindPhase(id + "p1", id, WindPhase.STEPPING_IN, 90_000, at + 90_000));
        long stop = elapsed + 500;
        take("wind.phase", new WindPhase(id + "p2", id, WindPhase.STOPPED, stop, at + stop));
        for (int k = 24; k < 28; k++) {
            take("wind.mark", new WindMark(id + "m" + k, id, -1, stop + 1_000L * (k - 23), at, false, null));
        }
        long off = stop + 5_000;
        take("wind.phase", new WindPhase(id + "p3", id, WindPhase.BACKED_OFF, off, at + off));
        for (int k = 28; k < 32; k++) {
            take("wind.mark", new WindMark(id + "m" + k, id, -1, off + 7_000L * (k - 27), at, false, null));
        }
        take("wind.phase", new WindPhase(id + "p4", id, WindPhase.OFF_METER, off + 40_000, at + off + 40_000));
        take("wind.counted", new WindCounted(id, 126, 210, 4.0, false));
    }

    private void practised(int i, long at) {
        double launch = 2 + random.nextDouble();
        take(
                "flight.flown",
                new PracticeFlown(
                        "practice" + i,
                        "event9999",
                        "model" + i % 2,
                        "motor" + i % 60,
                        at,
                        200,
                        10,
                        launch + 1,
                        "typed",
                        launch,
                        "typed",
                        2.0,
                        Math.round(1000 * (60 + 20 * launch)),
                        40.0,
                        null,
                        i % 20 != 0,
                        i % 20 == 0 ? "touched a beam" : null));
    }
}
