package org.skeinday.dayplan.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.skeinday.dayplan.PartTask;
import org.skeinday.dayplan.PlanTaken;
import org.skeinday.units.EnumWords;

/** Draws a plan: a lane for each attempt, then one for each person. */
final class BandsPresenter {
    private static final int LEFT = 150;
    private static final int WIDTH = 1000;
    private static final int LANE = 40;
    private static final int TOP = 30;
    private static final long MINUTE_MS = 60_000;
    private static final List<Integer> STEPS = List.of(1, 2, 5, 10, 15, 30, 60, 120);
    private static final int MOST_TICKS = 8;

    private final List<PlanTaken.Planned> tasks;
    private final DayWords words;
    private final long from;
    private final long to;

    private BandsPresenter(List<PlanTaken.Planned> tasks, DayWords words) {
        this.tasks = tasks;
        this.words = words;
        this.from = tasks.stream().mapToLong(PlanTaken.Planned::startMs).min().orElse(0);
        this.to = Math.max(
                from + MINUTE_MS,
                tasks.stream().mapToLong(PlanTaken.Planned::endMs).max().orElse(0));
    }

    /** Null without any task. */
    static DayView.@Nullable Bands of(List<PlanTaken.Planned> tasks, String finding, long nowMs, DayWords words) {
        return tasks.isEmpty() ? null : new BandsPresenter(tasks, words).draw(finding, nowMs);
    }

    private DayView.Bands draw(String finding, long nowMs) {
        List<DayView.Lane> lanes = new ArrayList<>();
        byAttempt().forEach((name, own) -> lanes.add(lane(name, own, lanes.size())));
        byPerson().forEach((name, own) -> lanes.add(lane(name, own, lanes.size())));
        return new DayView.Bands(
                finding,
                LEFT + WIDTH,
                TOP + lanes.size() * LANE + 4,
                nowMs < from || nowMs > to ? -1 : x(nowMs),
                lanes,
                ticks());
    }

    private DayView.Lane lane(String name, List<PlanTaken.Planned> own, int at) {
        return new DayView.Lane(
                name, TOP + at * LANE, own.stream().map(this::bar).toList());
    }

    private DayView.Bar bar(PlanTaken.Planned planned) {
        PartTask task = PartTask.parse(planned.task());
        return new DayView.Bar(
                x(planned.startMs()),
                Math.max(3, x(planned.endMs()) - x(planned.startMs())),
                task.part() == null ? "other" : EnumWords.of(task.part()),
                words.task(planned.task()) + ", " + words.clock(planned.startMs()) + " to "
                        + words.clock(planned.endMs()));
    }

    private Map<String, List<PlanTaken.Planned>> byAttempt() {
        Map<String, List<PlanTaken.Planned>> lanes = new LinkedHashMap<>();
        sorted().stream()
                .filter(t -> words.task(t.task()).equals(t.task())) // who is away has a lane as a person
                .forEach(t -> lanes.computeIfAbsent(PartTask.parse(t.task()).attempt(), a -> new ArrayList<>())
                        .add(t));
        return lanes;
    }

    private Map<String, List<PlanTaken.Planned>> byPerson() {
        Map<String, List<PlanTaken.Planned>> lanes = new LinkedHashMap<>();
        sorted().forEach(t -> t.who()
                .forEach(p -> lanes.computeIfAbsent(words.name(p), n -> new ArrayList<>())
                        .add(t)));
        return lanes;
    }

    private List<PlanTaken.Planned> sorted() {
        return tasks.stream()
                .sorted(Comparator.comparingLong(PlanTaken.Planned::startMs).thenComparing(PlanTaken.Planned::task))
                .toList();
    }

    private int x(long ms) {
        return LEFT + (int) ((ms - from) * WIDTH / (to - from));
    }

    private List<DayView.Tick> ticks() {
        long minutes = (to - from) / MINUTE_MS;
        long step = STEPS.stream()
                .filter(s -> minutes / s <= MOST_TICKS)
                .findFirst()
                .orElse(240);
        List<DayView.Tick> ticks = new ArrayList<>();
        for (long at = (from / MINUTE_MS / step + 1) * step * MINUTE_MS; at <= to; at += step * MINUTE_MS) {
            ticks.add(new DayView.Tick(x(at), words.clock(at)));
        }
        return ticks;
    }
}
