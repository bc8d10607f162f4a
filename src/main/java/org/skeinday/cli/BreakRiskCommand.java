package org.skeinday.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.skeinday.exchange.WindsFile;
import org.skeinday.motor.BreakEvidence;
import org.skeinday.motor.BreakRisk;
import org.skeinday.motor.BreakingTurns;
import org.skeinday.platform.record.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code break-risk}: how likely a motor breaks before some turns are reached. */
@Command(
        name = "break-risk",
        description =
                "Fits breaking turns of one batch (Weibull, winds that did not break censored) and tells the risk of"
                        + " breaking before the turns given, with a 90 %% interval: it holds the true risk in 90 of 100 such tests,"
                        + " also with few motors. Put in break tests and winds stopped by count; winds stopped on torque make the"
                        + " risk look small: leave them out, or mark them in a column stop.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Columns: loop_in,mass_g,motor_turns,broke or normalised_turns,broke; broke is yes or no. Other units by"
                    + " header, for example loop (mm). Two more may be there: motor (its tag; of a motor the last wind"
                    + " counts) and stop (count, breaking or torque).",
            "",
            "Example:",
            "  break-risk winds.csv --at 2300 --loop 18.5in --mass 1.7g"
        })
final class BreakRiskCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE.csv", description = "one row for each motor wound")
    private Path file = Path.of("");

    @Option(
            names = "--at",
            required = true,
            description = "motor turns of the motor that --loop and --mass name, or, without them, of the one size in"
                    + " the file; normalised turns when the file has those")
    private double at;

    @Option(names = "--loop", description = "with --mass: relaxed length ring to ring, for example 18.5in")
    private @Nullable String loop;

    @Option(names = "--mass", description = "with --loop, for example 1.7g")
    private @Nullable String mass;

    @Option(names = "--json", description = "one JSON object")
    private boolean json;

    /** @param size empty when {@code turns} were given normalised */
    private record Asked(double normalisedTurns, WindsFile.@Nullable Size size) {}

    @Override
    public Integer call() throws IOException {
        if (!Double.isFinite(at) || at <= 0) {
            throw wrong("--at must be more than zero and finite, but was " + at);
        }
        WindsFile.Size given = given();
        CsvFile csv = CsvFile.read(spec.commandLine(), file);
        WindsFile.Read read = WindsFile.read(csv.name(), csv.text());
        if (!read.errors().isEmpty()) {
            return CsvFile.say(spec.commandLine(), read.errors());
        }
        Asked asked = asked(read, given);
        BreakRisk risk = BreakEvidence.of(read.trials()).at(asked.normalisedTurns());
        spec.commandLine().getOut().println(json ? asJson(risk) : asWords(risk, asked));
        return 0;
    }

    private WindsFile.@Nullable Size given() {
        if ((loop == null) != (mass == null)) {
            throw wrong("Give both --loop and --mass or neither, for example --loop 18.5in --mass 1.7g");
        }
        if (loop == null || mass == null) {
            return null;
        }
        var size = new WindsFile.Size(Typed.length(spec, "--loop", loop), Typed.mass(spec, "--mass", mass));
        if (size.loop().millimetres() == 0 || size.mass().grams() == 0) {
            throw wrong("--loop and --mass must be more than zero, but were '" + loop + "' and '" + mass + "'");
        }
        return size;
    }

    private Asked asked(WindsFile.Read read, WindsFile.@Nullable Size given) {
        if (given == null && (read.normalised() || read.trials().isEmpty())) {
            return new Asked(at, null);
        }
        WindsFile.Size size = given != null
                ? given
                : read.onlySize()
                        .orElseThrow(() -> wrong("The motors in the file differ in size: say with --loop and --mass of"
                                + " which one --at " + Typed.number(at) + " are the motor turns"));
        return new Asked(BreakingTurns.k(at, size.loop(), size.mass()), size);
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }

    private static String asJson(BreakRisk risk) {
        ObjectNode object = Json.MAPPER.createObjectNode();
        if (risk instanceof BreakRisk.Estimated said) {
            object.put("shape", said.shape()).put("scale", said.scale());
            object.put("probability", said.probability());
            object.put("low", said.interval().low()).put("high", said.interval().high());
            object.put("profileLow", said.profileInterval().low());
            object.put("profileHigh", said.profileInterval().high());
        } else {
            object.putNull("shape").putNull("scale").putNull("probability");
            object.putNull("low").putNull("high").putNull("profileLow").putNull("profileHigh");
        }
        object.put("breaks", risk.basis().breaks()).put("winds", risk.basis().motors());
        if (risk.basis().torqueStopped() > 0) {
            object.put("torqueStopped", risk.basis().torqueStopped());
        }
        notKnown(risk).ifPresent(reason -> object.put("reason", reason));
        return object.toString();
    }

    /** Of the risk, or of how sure its interval is. */
    private static Optional<String> notKnown(BreakRisk risk) {
        return risk instanceof BreakRisk.Estimated said
                ? said.doubt()
                : Optional.of(((BreakRisk.NotKnown) risk).reason());
    }

    private String asWords(BreakRisk risk, Asked asked) {
        var text = new StringBuilder();
        WindsFile.Size size = asked.size();
        text.append("at            ").append(Typed.number(at)).append(size == null ? " normalised turns" : "");
        if (size != null) {
            text.append(String.format(
                    Locale.ROOT,
                    " motor turns of a loop of %.2f in and %.2f g: %.2f normalised turns",
                    size.loop().inches(),
                    size.mass().grams(),
                    asked.normalisedTurns()));
        }
        text.append('\n');
        if (risk instanceof BreakRisk.Estimated said) {
            text.append(String.format(
                    Locale.ROOT,
                    "risk          %.1f %% (90 %% interval %.1f to %.1f %%)%n"
                            + "fit           shape %.3f, scale %.3f normalised turns%n",
                    100 * said.probability(),
                    100 * said.interval().low(),
                    100 * said.interval().high(),
                    said.shape(),
                    said.scale()));
            said.doubt()
                    .ifPresent(
                            doubt -> text.append("not known     ").append(doubt).append('\n'));
        } else if (risk instanceof BreakRisk.NotKnown not) {
            text.append("risk          not known: ").append(not.reason()).append('\n');
        }
        text.append("rests on      ").append(risk.basis().breaks()).append(" breaks among ");
        text.append(risk.basis().motors()).append(" motors");
        if (risk.basis().torqueStopped() > 0) {
            text.append("\nnot fitted    ").append(risk.basis().torqueStopped()).append(" winds stopped on torque");
        }
        return text.toString();
    }
}
