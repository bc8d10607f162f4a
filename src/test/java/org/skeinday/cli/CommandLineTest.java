package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.platform.record.Json;

class CommandLineTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String line) {
        return Skeinday.run(line.split(" "), new PrintWriter(out, true), new PrintWriter(err, true));
    }

    private JsonNode json() throws Exception {
        return Json.MAPPER.readTree(out.toString());
    }

    @Test
    void winding_tells_the_worked_case_as_one_object() throws Exception {
        assertEquals(
                0,
                run("winding --loop 18.5in --breaking-turns 2700 --ratio 10 --use 2 --fraction 0.85 --stretch 4.5"
                        + " --share 0.55 --finish 11in --back-off 4 --json"));
        JsonNode plan = json();
        assertEquals(2700, plan.get("breakingMotorTurns").asDouble());
        assertEquals(229, plan.get("targetCrankTurns").asInt());
        assertEquals(126, plan.get("atFullStretchCrankTurns").asInt());
        assertEquals(2114.6, plan.get("fullStretchMm").asDouble(), 0.051); // 83.25 in
        assertEquals(279.4, plan.get("finishMm").asDouble());
        assertEquals(2250, plan.get("launchMotorTurns").asDouble());
        assertEquals(126, plan.get("walkIn").get(0).get("crankTurns").asInt());
        assertEquals(229, plan.get("walkIn").get(11).get("crankTurns").asInt());
        assertEquals(279.4, plan.get("walkIn").get(11).get("distanceMm").asDouble());
        assertEquals(0, plan.get("warnings").size());
    }

    @Test
    void winding_takes_fraction_and_stretch_from_the_use() throws Exception {
        assertEquals(0, run("winding --loop 18.5in --mass 1.7g --k 44 --ratio 10 --use 1 --finish 11in --json"));
        JsonNode plan = json();
        assertEquals(2685.3, plan.get("breakingMotorTurns").asDouble()); // 44 * 18.5^1.5 / 1.7^0.5
        assertEquals(214, plan.get("targetCrankTurns").asInt()); // 0.80 of it
        assertEquals(1879.6, plan.get("fullStretchMm").asDouble()); // 4 times
    }

    @Test
    void winding_says_in_words_where_to_stand_and_who_keeps_clear() {
        assertEquals(
                0, run("winding --loop 18.5in --breaking-turns 2700 --ratio 10 --use 1 --finish 11in --lane 1.5m"));
        assertTrue(out.toString().contains("note: The lane is shorter"), out.toString());
        assertTrue(out.toString().contains("Eye protection"), out.toString());
    }

    @Test
    void official_time_tells_the_exact_string_and_how() throws Exception {
        assertEquals(0, run("official-time --take middle --round down --to 0.1 --json 61.21 1:01.30 61.25"));
        assertEquals("61.2", json().get("officialSeconds").asText());
        String how = json().get("how").asText();
        assertTrue(how.contains("1:01.21") && how.contains("1:01.30") && how.contains("1:01.25"), how);
    }

    @Test
    void official_time_keeps_the_digits_of_the_step() throws Exception {
        assertEquals(0, run("official-time --take mean --round down --to 0.10 --json 60 60"));
        assertEquals("60.0", json().get("officialSeconds").asText());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "official-time --take middle --round down --to 0.1 61.21 61.30|of two",
                "official-time --take best --round down --to 0.1 61.21|--take must be one of middle, mean, longer, shorter",
                "official-time --take mean --round down --to 0 61.21|step",
                "official-time --take mean --round down --to x 61.21|--to must be a step",
                "official-time --take mean --round down --to 1 1:75|1:75",
                "official-time --take mean --round down --to 1|TIME",
                "winding --loop 18.5 --breaking-turns 2700 --ratio 10 --use 1 --finish 11in|--loop: '18.5' has no unit",
                "winding --loop 18.5in --ratio 10 --use 1 --finish 11in|--breaking-turns or both --mass and --k",
                "winding --loop 18.5in --mass 1.7g --k -4 --ratio 10 --use 1 --finish 11in|K must be",
                "winding --loop 18.5in --breaking-turns 2700 --ratio 10 --use 0 --finish 11in|--use must be",
                "winding --loop 18.5in --breaking-turns NaN --ratio 10 --use 1 --finish 11in|--breaking-turns",
                "winding --loop 18.5in --breaking-turns 2700 --ratio 10 --use 1 --finish 110in|finish",
                "winding --loop 18.5in --breaking-turns 2700 --ratio 10 --use 1 --finish 11in --lane 1cm|lane",
                "winding --loop|--loop needs a value",
                "winding --loop 18.5in --use x|--use: 'x' is not a whole number",
                "winding --loop 18.5in --ratio x|--ratio: 'x' is not a number",
                "official-time --take mean --round down --to 1 --jso 61.2|no option --jso of official-time. Did you mean --json?",
                "windin --loop 18.5in|There is no command windin. Did you mean winding?",
                "fly|There is no command fly. See --help.",
                "--nothing|There is no option --nothing. See --help."
            })
    void a_bad_value_is_one_clear_line_and_exit_2(String line, String said) {
        assertEquals(2, run(line));
        assertTrue(err.toString().contains(said), err.toString());
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
        assertEquals("", out.toString());
    }

    @ParameterizedTest
    @CsvSource({"--help,Examples", "winding --help,Example", "official-time --help,Example", "--version,Skeinday"})
    void help_and_version_are_there(String line, String said) {
        assertEquals(0, run(line));
        assertTrue(out.toString().contains(said), out.toString());
    }
}
