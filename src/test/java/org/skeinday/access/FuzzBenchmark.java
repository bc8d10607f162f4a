package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same as {@link FuzzWebTest} for longer, under {@code -Pbench}: ten seeds with 3,000 requests each, and 60 rounds of all forms. */
class FuzzBenchmark {
    private static final int SEEDS = Integer.getInteger("skeinday.seeds", 10);

    @TempDir
    Path root;

    @Test
    void ten_seeds_find_nothing() throws Exception {
        for (long seed = 1; seed <= SEEDS; seed++) {
            try (House house = new House(root.resolve("day-" + seed))) {
                Fuzz fuzz = new Fuzz(house, seed);
                assertEquals(List.of(), fuzz.ask(3_000), "seed " + seed);
                System.out.println("Fuzz, seed " + seed + ": " + fuzz.answers());
            }
            forms(seed);
        }
    }

    private void forms(long seed) throws Exception {
        try (House house = new House(root.resolve("forms-" + seed))) {
            FormFuzz fuzz = new FormFuzz(house, seed);
            assertEquals(List.of(), fuzz.ask(60), "seed " + seed);
            System.out.println("Forms, seed " + seed + ": " + fuzz.reached() + " of " + fuzz.sent()
                    + " requests were taken, of " + fuzz.taken().size() + " forms");
            fuzz.onOtherDays(root.resolve("others-" + seed), Staged.values());
        }
    }
}
