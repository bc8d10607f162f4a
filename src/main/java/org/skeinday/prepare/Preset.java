package org.skeinday.prepare;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.skeinday.contest.ScoreKind;
import org.skeinday.timing.Rounding;
import org.skeinday.timing.Take;

/**
 * Rules to begin with, under names that say what they do. Their sources stand in DEVELOPERS.md; rules change from year to
 * year, so that each field stays open to be changed.
 *
 * @param thing which form it fills in
 * @param cells by column
 */
public record Preset(Sheet thing, String path, String name, Map<String, String> cells) {
    private static final List<Preset> ALL = List.of(
            new Preset(
                    Sheet.EVENTS,
                    "mean-seconds",
                    "Two watches, mean, whole seconds down; best two of six",
                    rules("6", ScoreKind.SUM, "2", "2", Take.MEAN, Take.MEAN, Rounding.DOWN, "1", "no", "60")),
            new Preset(
                    Sheet.EVENTS,
                    "middle-tenths",
                    "Three watches, each up to tenths, then the middle; best of three",
                    rules("3", ScoreKind.BEST, "1", "3", Take.MIDDLE, Take.LONGER, Rounding.UP, "0.1", "yes", "0")),
            new Preset(
                    Sheet.EVENTS,
                    "middle-hundredths",
                    "Three watches, the middle, hundredths; of two the mean; best of three",
                    rules("3", ScoreKind.BEST, "1", "3", Take.MIDDLE, Take.MEAN, Rounding.DOWN, "0.01", "no", "0")),
            new Preset(
                    Sheet.EVENTS,
                    "one-watch",
                    "One watch, tenths down; sum of the best two of three",
                    rules("3", ScoreKind.SUM, "2", "1", Take.MIDDLE, Take.LONGER, Rounding.DOWN, "0.1", "no", "0")),
            new Preset(
                    Sheet.RULES,
                    "held-and-repeat",
                    "Held by the building: 10 s watched and deducted; one repeat of a short flight; collision: a choice",
                    Map.of(
                            "held watched", "10",
                            "held deduct", "10",
                            "repeats", "1",
                            "short again", "no-time",
                            "collision", "choice",
                            "time to choose", "60")),
            new Preset(
                    Sheet.RULES,
                    "without-best-and-worst",
                    "The mean without the best and the worst attempt, to the hundredth; ties by the best single time",
                    Map.of("drop best", "1", "drop worst", "1", "mean ranks", "rounded", "ties", "best")));

    private static Map<String, String> rules(
            String attempts,
            ScoreKind score,
            String bestOf,
            String timekeepers,
            Take take,
            Take ifTwo,
            Rounding round,
            String to,
            String watchesFirst,
            String minimum) {
        return Map.of(
                "attempts", attempts,
                "score", score.word(),
                "best of", bestOf,
                "timekeepers", timekeepers,
                "take", take.word(),
                "if two", ifTwo.word(),
                "round", round.word(),
                "to", to,
                "round watches first", watchesFirst,
                "minimum", minimum);
    }

    public static List<Preset> all() {
        return ALL;
    }

    public static Optional<Preset> ofPath(String path) {
        return ALL.stream().filter(p -> p.path.equals(path)).findFirst();
    }
}
