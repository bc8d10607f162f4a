package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.platform.record.Json;

class FlightCommandTest {
    private static final String CURVE = "motor_turns,torque (in-ozf)\n2300,0.75\n2150,0.48\n1900,0.33\n1500,0.25\n"
            + "1000,0.20\n500,0.16\n150,0.10\n0,0\n";

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    /** The example of the help, with some options otherwise; those that are empty are left out. */
    private int run(String text, Map<String, String> otherwise, String... more) throws IOException {
        Map<String, String> options = new LinkedHashMap<>();
        options.put("--model-mass", "4.1g");
        options.put("--motor-mass", "1.64g");
        options.put("--diameter", "355mm");
        options.put("--rotors", "2");
        options.put("--interference", "1.28");
        options.put("--merit", "0.45");
        options.put("--hover-rate", "9");
        options.put("--curve", Files.writeString(folder.resolve("u.csv"), text).toString());
        options.put("--turns", "2230");
        options.put("--air", "20 C, 1013 hPa");
        options.putAll(otherwise);
        List<String> args = new ArrayList<>(List.of("flight"));
        options.forEach((name, value) -> {
            if (!value.isEmpty()) {
                args.addAll(List.of(name, value));
            }
        });
        args.addAll(List.of(more));
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return Skeinday.run(args.toArray(String[]::new), new PrintWriter(out, true), new PrintWriter(err, true));
    }

    private JsonNode json(String text, Map<String, String> otherwise) throws IOException {
        assertEquals(0, run(text, otherwise, "--json"), err::toString);
        assertEquals(1, out.toString().strip().lines().count(), out.toString());
        return Json.MAPPER.readTree(out.toString());
    }

    @Test
    void the_example_has_the_figures_of_an_independent_calculation() throws IOException {
        JsonNode flight = json(CURVE, Map.of()); // calc: SciPy 1.17
        List<String> names = new ArrayList<>();
        flight.fieldNames().forEachRemaining(names::add);
        assertEquals(
                List.of(
                        "inducedVelocityMetresPerSecond",
                        "hoverPowerMilliwatts",
                        "hoverTorqueMilliNewtonMetres",
                        "secondsToDescent",
                        "turnsAtDescent",
                        "idealSeconds",
                        "shareUsed"),
                names);
        assertEquals(0.3436623826386351, flight.get(names.get(0)).asDouble(), 1e-9);
        assertEquals(55.02524952176696, flight.get(names.get(1)).asDouble(), 1e-7);
        assertEquals(0.9730600506949069, flight.get(names.get(2)).asDouble(), 1e-9);
        assertEquals(163.24246346905872, flight.get(names.get(3)).asDouble(), 1e-6);
        assertEquals(323.2127253799775, flight.get(names.get(4)).asDouble(), 1e-6);
        assertEquals(412.9720606972862, flight.get(names.get(5)).asDouble(), 1e-6);
        assertEquals(0.3952869431249915, flight.get(names.get(6)).asDouble(), 1e-9);
    }

    @Test
    void interference_and_air_have_their_defaults() throws IOException {
        JsonNode plain = json(CURVE, Map.of("--interference", "", "--air", ""));
        JsonNode said = json(CURVE, Map.of("--interference", "1", "--air", "15 C, 1013.25 hPa"));
        assertEquals(said, plain);
    }

    @Test
    void where_a_phase_is_said_the_rows_of_unwinding_count() throws IOException {
        String phases = CURVE.replace("ozf)\n", "ozf),phase\n").replaceAll("(?m)^(\\d.*)$", "$1,unwind");
        assertEquals(json(CURVE, Map.of()), json(phases + "0,0,wind\n2300,1.4,wind\n", Map.of()));
    }

    @Test
    void a_motor_that_never_hovers_flies_0_seconds_and_it_says_so() throws IOException {
        JsonNode flight = json(CURVE, Map.of("--turns", "100"));
        assertEquals(0, flight.get("secondsToDescent").asDouble());
        assertEquals(100, flight.get("turnsAtDescent").asDouble());
        assertEquals(0, flight.get("shareUsed").asDouble());
        assertTrue(
                flight.get("reason").asText().startsWith("it never hovers: torque at 100 turns is"), flight.toString());
        assertEquals(0, run(CURVE, Map.of("--turns", "100")));
        assertTrue(out.toString().contains("it never hovers: torque at 100 turns is"), out.toString());
    }

    @Test
    void words_say_how_long_and_what_of_the_energy_is_used() throws IOException {
        assertEquals(0, run(CURVE, Map.of()), err::toString);
        assertTrue(out.toString().contains("hover power       55.03 mW"), out.toString());
        assertTrue(
                out.toString().contains("after 163.2 s (2:43.2), with 323 of 2230 motor turns left"), out.toString());
        assertTrue(out.toString().contains("of which used 40 %"), out.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--turns|2301|--turns must lie within the readings, 0 to 2300 motor turns, but was 2301",
                "--turns|-1|--turns must lie within the readings, 0 to 2300 motor turns, but was -1",
                "--turns|NaN|--turns must lie within the readings",
                "--turns|many|--turns: 'many' is not a number",
                "--model-mass|4.1|--model-mass: '4.1' has no unit",
                "--model-mass|0g|--model-mass must be more than zero, but was '0g'",
                "--motor-mass|0 g|--motor-mass must be more than zero",
                "--diameter|0mm|--diameter must be more than zero",
                "--diameter|355g|--diameter: '355g' has the unknown unit",
                "--rotors|0|--rotors must be 1 to 12, but was 0",
                "--rotors|1.5|--rotors: '1.5' is not a whole number",
                "--interference|0.9|--interference must be 1 (rotors far apart) to 3, but was 0.9",
                "--merit|0|--merit must be above 0 and at most 1, but was 0.0",
                "--merit|1.01|--merit must be above 0 and at most 1",
                "--merit|NaN|--merit must be above 0 and at most 1",
                "--hover-rate|0|--hover-rate must be above 0",
                "--air|warm|--air: 'warm' is no air; write temperature, pressure or both, for example 20 C, 1013 hPa",
                "--air|90 C|--air: The temperature in °C must be -20 to 60, but was 90",
                "--curve|none.csv|There is no file none.csv"
            })
    void a_bad_value_is_one_clear_line_and_exit_2(String option, String value, String said) throws IOException {
        assertEquals(2, run(CURVE, Map.of(option, value)), out::toString);
        assertTrue(err.toString().contains(said), err.toString());
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
        assertEquals("", out.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "motor_turns,torque (in-ozf)/0,0/9,-1|line 3, column \"torque\": '-1' is below zero",
                "motor_turns,torque/0,0/9,1 mNm|line 2, column \"torque\": '0' has no unit",
                "motor_turns,torque (in-ozf)/9,1/9,2|u.csv: an unwinding curve needs readings at 2 different turns at least",
                "motor_turns,torque (in-ozf),phase/0,0,wind/9,1,wind|but there are 0 with the phase unwind"
            })
    void a_bad_curve_is_one_clear_line_and_exit_2(String rows, String said) throws IOException {
        assertEquals(2, run(rows.replace('/', '\n'), Map.of()), out::toString);
        assertTrue(err.toString().contains(said), err.toString());
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
    }

    @Test
    void what_must_be_given_is_named_and_help_shows_the_example() throws IOException {
        for (String option : List.of("--model-mass", "--diameter", "--rotors", "--merit", "--hover-rate", "--turns")) {
            assertEquals(2, run(CURVE, Map.of(option, "")), option);
            assertTrue(err.toString().contains(option), err.toString());
        }
        assertEquals(0, run(CURVE, Map.of(), "--help"));
        assertTrue(out.toString().contains("flight --model-mass 4.1g --motor-mass 1.64g"), out.toString());
        assertFalse(out.toString().contains("%%"), out.toString());
    }
}
