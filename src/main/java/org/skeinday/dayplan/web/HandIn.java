package org.skeinday.dayplan.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.skeinday.attempt.web.MotorsAtHand;
import org.skeinday.attempt.web.PageWords;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.Terms;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.ModelStore;
import org.skeinday.contest.store.TermsStore;
import org.skeinday.motor.BenchWork;
import org.skeinday.motor.MotorLife;
import org.skeinday.motor.Wait;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.platform.db.Tx;

/** Where motors are handed in: whether each is ready by then, or what is to be done inside the window. */
final class HandIn {
    private final Tx tx;
    private final EventAdded event;
    private final ZoneId zone;
    private final long nowMs;
    private final Map<Wait.Name, Wait> waits;

    HandIn(Tx tx, EventAdded event, ZoneId zone, long nowMs) {
        this.tx = tx;
        this.event = event;
        this.zone = zone;
        this.nowMs = nowMs;
        this.waits = MotorLifeStore.waits(tx);
    }

    /** Empty where nothing is handed in. */
    DayView.HandIn view() {
        Terms terms = TermsStore.of(tx, event.id());
        Long until = terms.handInAtMs();
        if (until == null) {
            return DayView.HandIn.NONE;
        }
        List<String> lines = new ArrayList<>();
        for (String motor : planned()) {
            MotorLifeStore.find(tx, motor).map(life -> line(life, until)).ifPresent(lines::add);
        }
        return new DayView.HandIn(
                (until > nowMs ? "Motors are handed in by " : "Motors were to be handed in by ")
                        + PageWords.clock(until, zone),
                lines);
    }

    /** What own entries have declared, else what they may fly with. */
    private Set<String> planned() {
        Set<String> motors = new LinkedHashSet<>();
        MotorsAtHand atHand = new MotorsAtHand(tx);
        for (EntryAdded entry : EntryStore.ofEvent(tx, event.id())) {
            if (entry.own()) {
                List<String> declared = EntryStore.motorsOf(tx, entry.id());
                motors.addAll(
                        declared.isEmpty()
                                ? atHand.planned(entry, ModelStore.ofEntry(tx, entry.id())).stream()
                                        .map(life -> life.motor().id())
                                        .toList()
                                : declared);
            }
        }
        return motors;
    }

    private String line(MotorLife life, long until) {
        String tag = life.motor().tag();
        if (life.stage().isOut()) {
            return tag + " is " + life.stage().word() + ": declare another";
        }
        BenchWork work = BenchWork.of(life, waits, nowMs);
        String needs = " needs " + DayWords.lasting(work.wishedS()) + " on the Bench";
        if (life.handedIn()) {
            return work.wishedS() == 0
                    ? tag + " is handed in, ready"
                    : tag + " is handed in and" + needs + ": inside the window, once it is given back";
        }
        BenchWork.Verdict verdict = work.within((until - nowMs) / 1000);
        return switch (verdict) {
            case DONE -> tag + " is ready";
            case FITS -> tag + needs + ": it fits, begin by " + PageWords.clock(until - work.wishedS() * 1000L, zone);
            case ONLY_SHORTENED ->
                tag + needs + ": it " + verdict.words() + " (" + DayWords.lasting(work.leastS()) + "), at once";
            case TOO_LATE -> tag + needs + ": it " + verdict.words() + "; keep it out, or do it inside the window";
        };
    }
}
