package org.skeinday.attempt.web;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.AttemptEvidence;
import org.skeinday.attempt.AttemptEvidence.BreakTold;
import org.skeinday.attempt.TurnsRunBack;
import org.skeinday.attempt.store.LiveAttempts;
import org.skeinday.motor.BreakPlace;
import org.skeinday.motor.MotorAdded;
import org.skeinday.motor.MotorStep;
import org.skeinday.motor.store.MotorLifeStore;
import org.skeinday.motor.store.MotorStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.units.PlainNumber;
import org.skeinday.winding.Wind;

/** The winds of one attempt in the order of time: which motor was wound, which broke, which was run back. */
final class WindsTold {
    private static final Comparator<Told> BY_TIME = Comparator.comparingLong(Told::atMs);

    private final Tx tx;
    private final AttemptEvidence known;
    private final WindPlaces places;

    private WindsTold(Tx tx, AttemptEvidence known, WindPlaces places) {
        this.tx = tx;
        this.known = known;
        this.places = places;
    }

    /** @param end how a wind ended, empty for its beginning */
    private record Told(long atMs, String end, String motor, String words) {
        static Told begun(long atMs, String motor, String words) {
            return new Told(atMs, "", motor, words);
        }

        boolean begins() {
            return end.isEmpty();
        }
    }

    static List<NowView.Line> of(Tx tx, String attempt, ZoneId zone, WindPlaces places) {
        return LiveAttempts.evidence(tx, attempt)
                .map(known -> new WindsTold(tx, known, places).lines(zone))
                .orElse(List.of());
    }

    private List<NowView.Line> lines(ZoneId zone) {
        List<Told> all = new ArrayList<>();
        known.winds()
                .forEach(wind ->
                        all.add(Told.begun(wind.begun().atMs(), wind.begun().motorId(), at(wind))));
        unread().ifPresent(all::add);
        known.runBacks().forEach(back -> all.add(runBack(back)));
        broken().forEach(motor -> broke(motor).ifPresent(all::add));
        all.sort(BY_TIME);
        return numbered(all, zone);
    }

    /** An end without a beginning is of a wind that nobody read. */
    private List<NowView.Line> numbered(List<Told> all, ZoneId zone) {
        List<NowView.Line> lines = new ArrayList<>();
        int winds = 0;
        String wound = "";
        for (Told told : all) {
            winds += told.begins() || !told.motor().equals(wound) ? 1 : 0;
            wound = told.begins() ? told.motor() : "";
            lines.add(new NowView.Line(
                    "wind " + winds + (told.begins() ? ", " : ", " + told.end() + ", ")
                            + PageWords.second(told.atMs(), zone),
                    "motor " + tag(told.motor()) + told.words()));
        }
        return lines;
    }

    /** The wind at hand, where nobody reads it. */
    private Optional<Told> unread() {
        @Nullable Long atMs = known.steps().windingAtMs();
        @Nullable String motor = known.now().motorId();
        return atMs == null || motor == null || known.presentWind().isPresent() || isRead(motor, atMs)
                ? Optional.empty()
                : Optional.of(Told.begun(atMs, motor, ""));
    }

    private String at(Wind wind) {
        return places.at(wind).map(name -> ", at " + name).orElse("");
    }

    private boolean isRead(String motor, long fromMs) {
        return known.winds().stream()
                .map(Wind::begun)
                .anyMatch(begun -> begun.motorId().equals(motor) && begun.atMs() >= fromMs);
    }

    private static Told runBack(TurnsRunBack back) {
        return new Told(
                back.atMs(),
                "run back",
                back.motorId(),
                ", with " + PlainNumber.of(back.crankTurns()) + " crank turns on");
    }

    private Set<String> broken() {
        Set<String> motors = known.breaks().stream().map(BreakTold::motorId).collect(Collectors.toSet());
        String present = known.now().motorId();
        if (known.motorBrokeAtMs() != null && present != null) {
            motors.add(present);
        }
        return motors;
    }

    /** Empty for a motor that was whole after all. */
    private Optional<Told> broke(String motor) {
        return MotorLifeStore.breakOf(tx, motor).map(step -> broke(motor, step));
    }

    private Told broke(String motor, MotorStep step) {
        BreakPlace where = known.breakOf(motor).where();
        String words = where == null ? "" : ", " + PageWords.place(where).toLowerCase(Locale.ROOT);
        return new Told(step.atMs(), "broke", motor, words);
    }

    private String tag(String motor) {
        return MotorStore.find(tx, motor).map(MotorAdded::tag).orElse("that is not in the list any more");
    }
}
