package org.skeinday.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.record.Json;
import org.skeinday.timing.OfficialTime;
import org.skeinday.timing.Rounding;
import org.skeinday.timing.Take;
import org.skeinday.timing.TimeRule;
import org.skeinday.units.EnumWords;
import org.skeinday.units.FlightTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code official-time}: several watches, one official time. */
@Command(
        name = "official-time",
        description = "Reduces the watches of one flight to its official time, exactly.",
        mixinStandardHelpOptions = true,
        footer = {"", "Example:", "  official-time --take mean --round down --to 1 61.99 1:02.00"})
final class OfficialTimeCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Option(names = "--take", required = true, description = "middle, mean, longer or shorter")
    private String take = "";

    @Option(names = "--if-two", description = "under middle with two watches: longer, mean or shorter")
    private @Nullable String ifTwo;

    @Option(names = "--round", required = true, description = "up, down or nearest (half up)")
    private String round = "";

    @Option(names = "--to", required = true, description = "step in seconds, for example 1, 0.1 or 0.01")
    private String step = "";

    @Option(names = "--round-watches-first", description = "round each watch, then reduce")
    private boolean roundWatchesFirst;

    @Option(names = "--json", description = "one JSON object")
    private boolean json;

    @Parameters(arity = "1..*", paramLabel = "TIME", description = "61.21 or 1:01.30")
    private List<String> times = new ArrayList<>();

    @Override
    public Integer call() {
        try {
            TimeRule rule = rule();
            OfficialTime official =
                    OfficialTime.reduce(times.stream().map(FlightTime::parse).toList(), rule);
            String seconds = new FlightTime(official.millis()).seconds(rule.decimals());
            var object = Json.MAPPER
                    .createObjectNode()
                    .put("officialSeconds", seconds)
                    .put("how", official.how());
            spec.commandLine().getOut().println(json ? object.toString() : seconds + " s\n" + official.how());
            return 0;
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), String.valueOf(e.getMessage()));
        }
    }

    private TimeRule rule() {
        return new TimeRule(
                one(Take.class, "--take", take),
                ifTwo == null ? null : one(Take.class, "--if-two", ifTwo),
                one(Rounding.class, "--round", round),
                stepMs(),
                roundWatchesFirst);
    }

    private long stepMs() {
        try {
            return FlightTime.parse(step).millis();
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "--to must be a step in seconds, for example 1, 0.1 or 0.01, but was '" + step + "'");
        }
    }

    private static <E extends Enum<E>> E one(Class<E> type, String option, String word) {
        return EnumWords.parse(option, type, word);
    }
}
