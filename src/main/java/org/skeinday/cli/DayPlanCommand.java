package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.skeinday.dayplan.DayPlan;
import org.skeinday.dayplan.Effort;
import org.skeinday.dayplan.HoldUp;
import org.skeinday.dayplan.InHand;
import org.skeinday.dayplan.Outcome;
import org.skeinday.dayplan.PlanProblem;
import org.skeinday.dayplan.Planner;
import org.skeinday.dayplan.Requirement;
import org.skeinday.dayplan.SearchClock;
import org.skeinday.dayplan.Task;
import org.skeinday.dayplan.TimeWords;
import org.skeinday.dayplan.WayOut;
import org.skeinday.dayplan.WaysOut;
import org.skeinday.dayplan.WhyNot;
import org.skeinday.platform.record.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code dayplan}: when each task starts, proven; or what conflicts. */
@Command(
        name = "dayplan",
        description = "Plans tasks with windows, lags and shared resources, and proves the plan best: the end of the"
                + " last task as early as can be (makespan), or the smallest time in hand before a window closes as"
                + " large as can be (slack). When there is no plan it names requirements that conflict.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "The file: {\"tasks\":[{\"id\":\"wind\",\"duration\":4,\"needs\":{\"station\":1},\"earliest\":0,"
                    + "\"latestEnd\":20,\"fixedStart\":null}],\"resources\":{\"station\":2},"
                    + "\"lags\":[{\"from\":\"wind\",\"to\":\"fly\",\"min\":4,\"max\":5}],\"goal\":\"slack\"}. Lags run"
                    + " from start to start. All numbers are whole; all but id and duration may be left out.",
            "",
            "Example:",
            "  dayplan day.json --json",
            "  dayplan day.json --limit 30"
        })
final class DayPlanCommand implements Callable<Integer> {
    private final LongSupplier nanos;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE.json", description = "tasks, resources, lags and the goal")
    private Path file = Path.of("");

    @Option(
            names = "--limit",
            paramLabel = "SECONDS",
            description =
                    "ends the search: the best plan until then, what no plan can beat, and the gap between them; with"
                            + " a limit the clock decides which plan it is")
    private @Nullable Double limit;

    @Option(names = "--json", description = "one JSON object")
    private boolean json;

    /** @param nanos of a clock that is never set, for the limit */
    DayPlanCommand(LongSupplier nanos) {
        this.nanos = nanos;
    }

    @Override
    public Integer call() throws IOException {
        if (limit != null && !(limit > 0 && limit <= SearchClock.LONGEST)) {
            throw new ParameterException(
                    spec.commandLine(), "--limit must be above 0 and at most 86400 seconds, but was " + limit);
        }
        CsvFile read = CsvFile.read(spec.commandLine(), file);
        DayPlanFile asked = asked(read);
        Planner.loadSolver(System.getProperty("java.io.tmpdir"));
        SearchClock clock = limit == null ? SearchClock.unlimited(nanos) : SearchClock.of(limit, nanos);
        Outcome outcome;
        try (var lines =
                new ProgressLines(clock, asked.goal(), spec.commandLine().getErr())) {
            outcome = Planner.plan(asked.problem(), asked.goal(), Effort.patient(), clock);
        }
        spec.commandLine()
                .getOut()
                .println(json ? asJson(asked.problem(), outcome) : asWords(asked.problem(), outcome, clock));
        return 0;
    }

    private DayPlanFile asked(CsvFile read) {
        try {
            return DayPlanFile.read(read.name(), read.text());
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()));
        }
    }

    private String asJson(PlanProblem problem, Outcome outcome) {
        ObjectNode object = Json.MAPPER.createObjectNode();
        object.put("status", outcome.status().name().toLowerCase(Locale.ROOT));
        object.put("objective", number(outcome.objective()));
        if (limit != null) {
            object.put("makespan", number(outcome.makespan(problem)));
            object.put("bound", number(outcome.bound()));
            OptionalDouble gap = outcome.gap();
            object.put("gap", gap.isEmpty() ? null : (Double) gap.getAsDouble());
        }
        ObjectNode starts = object.putObject("starts");
        DayPlan plan = outcome.plan();
        if (plan != null) {
            plan.starts().forEach(starts::put);
        }
        var conflict = object.putArray("conflict");
        outcome.conflict().stream().map(Requirement::id).forEach(conflict::add);
        if (outcome.conflict().isEmpty()) {
            object.putNull("irreducible");
        } else {
            object.put("irreducible", outcome.irreducible());
        }
        object.put("seconds", Math.round(outcome.seconds() * 1e6) / 1e6);
        return object.toString();
    }

    private static @Nullable Long number(OptionalLong value) {
        return value.isEmpty() ? null : (Long) value.getAsLong();
    }

    private static String asWords(PlanProblem problem, Outcome outcome, SearchClock clock) {
        var text = new StringBuilder(outcome.status().name().toLowerCase(Locale.ROOT));
        outcome.objective().ifPresent(value -> text.append(", objective ").append(value));
        if (outcome.status() == Outcome.Status.FEASIBLE) {
            outcome.bound()
                    .ifPresent(bound -> text.append(", no plan can beat ").append(bound));
            outcome.gap().ifPresent(gap -> text.append(String.format(Locale.ROOT, " (gap %.1f %%)", 100 * gap)));
        }
        DayPlan plan = outcome.plan();
        if (plan != null) {
            text.append(table(problem, plan));
            HoldUp.ofTheTightest(problem, plan).forEach(wait -> text.append("\n" + wait.task() + " " + wait.because()));
        }
        if (plan == null) {
            text.append(whyNot(problem, outcome, clock.within(Effort.patient())));
        }
        return text.toString();
    }

    private static String whyNot(PlanProblem problem, Outcome outcome, Effort effort) {
        var text = new StringBuilder();
        if (outcome.status() == Outcome.Status.INFEASIBLE) {
            text.append("\nthese cannot be kept together");
            text.append(outcome.irreducible() ? "; each of them is needed for that:" : "; one may be needless:");
            WhyNot.words(problem, outcome.conflict(), TimeWords.NUMBERS).forEach(line -> text.append("\n- " + line));
        } else {
            text.append("\nno plan was found, and no proof that there is none");
        }
        List<WayOut> ways = WaysOut.of(problem, outcome.conflict(), effort);
        text.append(ways.isEmpty() ? "\nno way out was found in time" : "\nany of these would do:");
        ways.forEach(way -> text.append("\n- " + way.words(problem, TimeWords.NUMBERS)));
        return text.toString();
    }

    private static String table(PlanProblem problem, DayPlan plan) {
        InHand inHand = InHand.of(problem, plan);
        List<Task> inOrder = problem.tasks().stream()
                .sorted(Comparator.comparingLong(task -> plan.start(task.id())))
                .toList();
        var text = new StringBuilder();
        for (Task task : inOrder) {
            text.append(String.format(Locale.ROOT, "%n%8d  %s", plan.start(task.id()), task.id()));
            inHand.latestSafeStart(task.id())
                    .ifPresent(latest -> text.append(", at the latest ").append(latest));
        }
        return text.toString();
    }
}
