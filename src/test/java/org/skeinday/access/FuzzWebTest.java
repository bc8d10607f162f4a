package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Nothing that can be sent makes an error of ours, and what is refused changes nothing. */
@Timeout(240)
class FuzzWebTest {
    private static final long SEED = Long.getLong("skeinday.seed", 20260509);
    private static final int REQUESTS = Integer.getInteger("skeinday.requests", 400);

    @TempDir
    Path root;

    @Test
    void no_request_makes_an_error_and_no_refusal_a_change() throws Exception {
        System.out.println("Fuzz: -Dskeinday.seed=" + SEED + " -Dskeinday.requests=" + REQUESTS);
        try (House house = new House(root.resolve("day"))) {
            Fuzz fuzz = new Fuzz(house, SEED);
            assertEquals(List.of(), fuzz.ask(REQUESTS), "seed " + SEED);
            System.out.println("Fuzz: " + fuzz.answers());
            int saved =
                    fuzz.answers().getOrDefault("POST 200", 0) + fuzz.answers().getOrDefault("POST 204", 0);
            assertTrue(saved >= 4, "saved among " + fuzz.answers());
            for (String kind : List.of("GET 200", "GET 403", "POST 403", "POST 404", "POST 422")) {
                assertTrue(fuzz.answers().getOrDefault(kind, 0) >= 4, kind + " among " + fuzz.answers());
            }
        }
    }

    /** Most nonsense is stopped by the first check of a form: here each is mended until its deed is reached. */
    @Test
    void forms_that_are_mended_until_they_are_taken_make_no_error_either() throws Exception {
        System.out.println("Forms: -Dskeinday.seed=" + SEED);
        try (House house = new House(root.resolve("day"))) {
            FormFuzz fuzz = new FormFuzz(house, SEED);
            List<String> found = fuzz.ask(Math.max(1, REQUESTS / 30));
            System.out.println("Forms: " + fuzz.reached() + " of " + fuzz.sent() + " requests were taken, of "
                    + fuzz.taken().size() + " forms: " + fuzz.taken());
            fuzz.notYet().forEach((form, said) -> System.out.println("Never taken: " + form + " " + said));
            assertEquals(List.of(), found, "seed " + SEED);
            assertTrue(fuzz.reached() * 2 >= fuzz.sent(), fuzz.reached() + " of " + fuzz.sent() + " reached a deed");
            assertTrue(fuzz.taken().size() >= 20, "taken: " + fuzz.taken());
            FormFuzz all = fuzz.onOtherDays(root, Staged.LANDED); // all stages: FuzzBenchmark
            assertTrue(all.taken().size() >= 33, "taken: " + all.taken());
        }
    }
}
