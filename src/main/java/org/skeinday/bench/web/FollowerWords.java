package org.skeinday.bench.web;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.UnitSystem;
import org.skeinday.winding.Count;
import org.skeinday.winding.FloorMark;
import org.skeinday.winding.FloorMarkReached;
import org.skeinday.winding.Wind;
import org.skeinday.winding.WindUndone;
import org.skeinday.winding.WindingPlan;

/** A wind as it goes on, for those who follow it; the reader's own page says the same ({@code readerwords.js}). */
record FollowerWords(Wind wind, @Nullable WindingPlan plan, UnitSystem units) {
    /** @param device that looks: it may take back what it said itself */
    WindingView.Live at(long nowMs, String device) {
        long elapsed = Math.max(0, nowMs - wind.begun().atMs());
        int level = wind.level(elapsed);
        Optional<Count> count = wind.turns().at(elapsed);
        boolean turning = isTurning();
        return new WindingView.Live(
                phase(),
                String.valueOf(level),
                wind.torque(level).map(units::torque).orElse(""),
                turning ? near(level) : "",
                wind.word(elapsed).text(),
                turning ? place(count) : "",
                turning ? count.map(this::turns).orElse("") : "",
                turning && plan != null ? spots(nowMs, device) : List.of());
    }

    private boolean isTurning() {
        return wind.phase().compareTo(Wind.Phase.STOPPED) < 0;
    }

    private String phase() {
        return switch (wind.phase()) {
            case WINDING_AT_FULL_STRETCH -> "winding at full stretch";
            case WALKING_IN -> "walking in";
            case STOPPED -> "last turn is on, backing off";
            case HOLDING -> "holding";
            case BROKE -> "the motor broke";
            case OFF_METER -> "off the meter";
        };
    }

    private String near(int level) {
        OptionalInt limit = wind.ceilingLevel();
        if (limit.isEmpty()) {
            return "";
        }
        int left = limit.getAsInt() - level;
        return left > 0 ? left + " to go" : "at the limit";
    }

    /** Where somebody saw the winder; else by the count, which is an estimate until the counts are entered. */
    private String place(Optional<Count> count) {
        if (plan == null) {
            return "";
        }
        OptionalInt seen = wind.floorMark();
        int at = seen.orElseGet(() ->
                FloorMark.at(count.map(Count::crankTurns).orElse(0.0), plan).number());
        boolean estimated = seen.isEmpty() && count.filter(Count::estimated).isPresent();
        List<WindingPlan.Step> marks = plan.floorMarks();
        String next = at < marks.size()
                ? "to mark " + (at + 1) + " by " + marks.get(at).crankTurns()
                : units.length(marks.get(marks.size() - 1).distance());
        return (seen.isPresent() ? "at mark " : "stand at mark ") + at + " \u00b7 " + next
                + (estimated ? " \u00b7 estimated" : "");
    }

    private String turns(Count count) {
        Integer target = wind.begun().targetCrankTurns();
        return "about " + Math.round(count.crankTurns()) + (target == null ? "" : " of " + target) + " turns"
                + (count.estimated() ? ", estimated" : "");
    }

    /** The first is where everybody begins. */
    private List<WindingView.Spot> spots(long nowMs, String device) {
        return IntStream.rangeClosed(2, FloorMarkReached.MARKS)
                .mapToObj(number -> spot(number, nowMs, device))
                .toList();
    }

    private WindingView.Spot spot(int number, long nowMs, String device) {
        Optional<FloorMarkReached> seen =
                wind.floor().stream().filter(mark -> mark.number() == number).findFirst();
        long until = seen.filter(mark -> mark.device().equals(device))
                .map(mark -> mark.atMs() + WindUndone.WITHIN_MS)
                .filter(ends -> ends > nowMs)
                .orElse(0L);
        return new WindingView.Spot(
                String.valueOf(number),
                seen.isPresent(),
                seen.map(FloorMarkReached::id).orElse(""),
                until);
    }
}
