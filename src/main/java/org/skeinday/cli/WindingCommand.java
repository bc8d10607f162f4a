package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.platform.record.Json;
import org.skeinday.units.Length;
import org.skeinday.units.Mass;
import org.skeinday.winding.WindingPlan;
import org.skeinday.winding.WindingPolicy;
import org.skeinday.winding.WindingRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code winding}: a motor's winding plan. */
@Command(
        name = "winding",
        description = "Computes a winding plan: where to stand, how many crank turns, when to step in.",
        mixinStandardHelpOptions = true,
        footer = {"", "Example:", "  winding --loop 18.5in --mass 1.7g --k 44 --ratio 10 --use 1 --finish 11in"})
final class WindingCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Option(names = "--loop", required = true, description = "relaxed length ring to ring, for example 18.5in")
    private String loop = "";

    @Option(names = "--breaking-turns", description = "motor turns at which such motors break")
    private @Nullable BigDecimal breakingTurns;

    @Option(names = "--mass", description = "with --k in place of --breaking-turns, for example 1.7g")
    private @Nullable String mass;

    @Option(names = "--k", description = "the batch's K (inches, grams); published 41.5 to 45.7")
    private @Nullable Double k;

    @Option(names = "--ratio", required = true, description = "motor turns to one crank turn")
    private BigDecimal ratio = BigDecimal.TEN;

    @Option(names = "--use", required = true, description = "1 for the first winding")
    private int use;

    @Option(names = "--fraction", description = "of the breaking turns; by use when left out")
    private @Nullable BigDecimal fraction;

    @Option(names = "--stretch", description = "times the length; 4 for the first use, then 5")
    private @Nullable BigDecimal stretch;

    @Option(names = "--share", description = "of the turns at full stretch; 0.60 when left out")
    private BigDecimal share = WindingPolicy.SHARE_AT_FULL_STRETCH;

    @Option(names = "--finish", required = true, description = "length at which winding ends")
    private String finish = "";

    @Option(names = "--back-off", description = "crank turns taken off again; 2 when left out")
    private int backOff = WindingPolicy.BACK_OFF_PRACTISED;

    @Option(names = "--lane", description = "room hook to hook, for example 9m")
    private @Nullable String lane;

    @Option(names = "--json", description = "one JSON object")
    private boolean json;

    @Override
    public Integer call() {
        Length length = length("--loop", loop);
        BigDecimal breaking = breaking(length);
        WindingPlan plan = plan(length, breaking);
        spec.commandLine().getOut().println(json ? asJson(plan, breaking) : asWords(plan, breaking));
        return 0;
    }

    private WindingPlan plan(Length length, BigDecimal breaking) {
        if (use < 1 || use > 100) {
            throw new ParameterException(spec.commandLine(), "--use must be 1 (first) to 100, but was " + use);
        }
        Length end = length("--finish", finish);
        Length room = lane == null ? null : length("--lane", lane);
        try {
            return WindingPlan.compute(new WindingRequest(
                    length,
                    breaking,
                    ratio,
                    fraction == null ? WindingPolicy.fraction(use) : fraction,
                    stretch == null ? WindingPolicy.stretch(use) : stretch,
                    share,
                    end,
                    backOff,
                    room));
        } catch (IllegalArgumentException e) {
            throw wrong(e);
        }
    }

    private Length length(String option, String typed) {
        return Typed.length(spec, option, typed);
    }

    private BigDecimal breaking(Length length) {
        if (breakingTurns != null && k == null && mass == null) {
            return breakingTurns;
        }
        if (breakingTurns != null || k == null || mass == null) {
            throw new ParameterException(
                    spec.commandLine(),
                    "Give either --breaking-turns or both --mass and --k, for example --mass 1.7g --k 44");
        }
        try {
            return BigDecimal.valueOf(BreakingTurns.of(k, length, Mass.parse(mass)));
        } catch (IllegalArgumentException e) {
            throw wrong(e);
        }
    }

    private ParameterException wrong(IllegalArgumentException e) {
        return new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()));
    }

    private static BigDecimal mm(Length length) {
        return tenth(BigDecimal.valueOf(length.millimetres()));
    }

    /** To a tenth at most; 2700 stays 2700. */
    private static BigDecimal tenth(BigDecimal value) {
        return new BigDecimal(
                value.setScale(1, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString());
    }

    private String asJson(WindingPlan plan, BigDecimal breaking) {
        ObjectNode object = Json.MAPPER.createObjectNode();
        object.put("breakingMotorTurns", tenth(breaking));
        object.put("targetCrankTurns", plan.targetCrankTurns());
        object.put("atFullStretchCrankTurns", plan.atFullStretchCrankTurns());
        object.put("fullStretchMm", mm(plan.fullStretch()));
        object.put("finishMm", mm(plan.finish()));
        object.put("launchMotorTurns", plan.launchMotorTurns());
        var rows = object.putArray("walkIn");
        plan.walkIn()
                .forEach(row ->
                        rows.addObject().put("crankTurns", row.crankTurns()).put("distanceMm", mm(row.distance())));
        var warnings = object.putArray("warnings");
        warnings(plan).forEach(warnings::add);
        return object.toString();
    }

    private String asWords(WindingPlan plan, BigDecimal breaking) {
        var text = new StringBuilder();
        text.append("breaking turns   ").append(tenth(breaking).toPlainString()).append(" motor turns\n");
        text.append("start at         ").append(both(plan.fullStretch())).append(" hook to hook\n");
        text.append("at full stretch  ").append(plan.atFullStretchCrankTurns()).append(" crank turns\n");
        text.append("turns limit      ").append(plan.targetCrankTurns()).append(" crank turns, ");
        text.append(both(plan.finish())).append('\n');
        text.append("launch with      ")
                .append(plan.launchMotorTurns().toPlainString())
                .append(" motor turns\n");
        text.append("torque limit     not known here: the turns limit ends the wind\n");
        text.append("walk in\n");
        plan.walkIn()
                .forEach(row ->
                        text.append(String.format(Locale.ROOT, "  %4d  %s%n", row.crankTurns(), both(row.distance()))));
        warnings(plan).forEach(warning -> text.append("note: ").append(warning).append('\n'));
        return text.append("Eye protection for all in the lane's reach; nobody in line with either end.")
                .toString();
    }

    private static String both(Length length) {
        return String.format(Locale.ROOT, "%.2f in (%.0f mm)", length.inches(), length.millimetres());
    }

    private List<String> warnings(WindingPlan plan) {
        return Stream.concat(plan.warnings().stream(), WindingPolicy.aboutUse(use).stream())
                .toList();
    }
}
