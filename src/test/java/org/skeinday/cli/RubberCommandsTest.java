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
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.platform.record.Json;

class RubberCommandsTest {
    private static final Path PUBLISHED = Path.of("src/test/resources/published/motor");

    /** Loop and mass of 1 in and 1 g: normalised turns are motor turns. */
    private static final String THREE_BREAKS = "normalised_turns,broke\n38,yes\n41,yes\n44,yes\n40,no\n";

    private static final String READINGS =
            "motor_turns,torque_nmm,phase\n0,0,wind\n1000,6,wind\n1000,4,unwind\n500,2,unwind\n0,0,unwind\n";

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String command, String text, String options) throws IOException {
        Path file = folder.resolve("file.csv");
        Files.writeString(file, text);
        List<String> args = new ArrayList<>(List.of(command, file.toString()));
        args.addAll(List.of(options.strip().split(" +")));
        args.remove("");
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return Skeinday.run(args.toArray(String[]::new), new PrintWriter(out, true), new PrintWriter(err, true));
    }

    private JsonNode json(String command, String text, String options) throws IOException {
        assertEquals(0, run(command, text, options + " --json"), err::toString);
        assertEquals(1, out.toString().strip().lines().count(), out.toString());
        return Json.MAPPER.readTree(out.toString());
    }

    private static double number(JsonNode json, String key) {
        assertTrue(json.has(key) && json.get(key).isNumber(), key + " in " + json);
        return json.get(key).asDouble();
    }

    private static List<String> published(String file) throws IOException {
        return Files.readAllLines(PUBLISHED.resolve(file)).stream()
                .filter(line -> !line.startsWith("#"))
                .skip(1)
                .toList();
    }

    @Test
    void the_censored_example_of_the_handbook_comes_out_of_a_file() throws IOException {
        // NIST/SEMATECH e-Handbook 8.4.1 (data from memory): shape 1.7208, scale 606.5280
        String text = "normalised_turns,broke\n" + String.join("\n", published("weibull-censored.csv"));
        JsonNode risk = json("break-risk", text, "--at 500");
        assertEquals(1.7208, number(risk, "shape"), 5e-5);
        assertEquals(606.5280, number(risk, "scale"), 1e-3);
        double expected = 1 - Math.exp(-Math.pow(500 / 606.5280, 1.7208));
        assertEquals(expected, number(risk, "probability"), 1e-4);
        assertTrue(number(risk, "low") < expected && expected < number(risk, "high"), risk.toString());
        assertEquals(10, risk.get("breaks").asInt());
        assertEquals(20, risk.get("winds").asInt());
        assertFalse(risk.has("reason"));
        assertTrue(number(risk, "low") < number(risk, "profileHigh"), risk.toString());
    }

    @Test
    void the_plain_interval_stands_beside_the_calibrated_one_and_below_five_motors_it_says_what_is_not_known()
            throws IOException {
        JsonNode four = json("break-risk", THREE_BREAKS, "--at 40");
        assertTrue(four.get("profileLow").isNumber() && four.get("profileHigh").isNumber(), four.toString());
        assertTrue(four.get("reason").asText().contains("is not known with 4 motors"), four.toString());
        assertEquals(0, run("break-risk", THREE_BREAKS, "--at 40"));
        assertTrue(out.toString().contains("not known     how often such an interval"), out.toString());
        JsonNode five =
                json("break-risk", "normalised_turns,broke\n38,yes\n41,yes\n44,yes\n42,yes\n40.5,yes\n", "--at 40");
        assertFalse(five.has("reason"), five.toString());
        double wide = number(five, "high") - number(five, "low");
        assertTrue(wide > number(five, "profileHigh") - number(five, "profileLow"), five.toString());
        JsonNode none = json("break-risk", "normalised_turns,broke\n40,no\n", "--at 40");
        assertTrue(none.get("profileLow").isNull() && none.get("profileHigh").isNull(), none.toString());
    }

    @Test
    void two_breaks_are_too_few_and_three_are_enough() throws IOException {
        JsonNode two = json("break-risk", THREE_BREAKS.replace("44,yes", "44,no"), "--at 40");
        for (String key : List.of("probability", "shape", "scale", "low", "high")) {
            assertTrue(two.has(key) && two.get(key).isNull(), key + " in " + two);
        }
        assertEquals("too few breaks to tell", two.get("reason").asText());
        assertEquals(2, two.get("breaks").asInt());
        assertEquals(4, two.get("winds").asInt());
        double risk = number(json("break-risk", THREE_BREAKS, "--at 40"), "probability");
        assertTrue(risk > 0.05 && risk < 0.6, "risk " + risk);
    }

    @Test
    void no_wind_at_all_is_too_few_too() throws IOException {
        JsonNode none = json("break-risk", "loop_in,mass_g,motor_turns,broke\n", "--at 2300");
        assertTrue(none.get("probability").isNull());
        assertEquals(0, none.get("winds").asInt());
    }

    @Test
    void motors_of_any_size_and_unit_say_the_same_as_their_normalised_turns() throws IOException {
        JsonNode plain = json("break-risk", THREE_BREAKS, "--at 40");
        // 16 in and 4 g: 64 / 2 = 32 motor turns for each normalised one; 4 in and 1 g: 8
        String motors = "Loop (mm);Mass [mg];Motor turns;Broke\n406,4;4000;1216;yes\n406,4;4000;1312;YES\n"
                + "101,6;1000;352;yes\n\"4 in\";1 g;320;no\n";
        JsonNode risk = json("break-risk", motors, "--at 1280 --loop 16in --mass 4g");
        for (String key : List.of("shape", "scale", "probability", "low", "high")) {
            assertEquals(number(plain, key), number(risk, key), 1e-6 * number(plain, key), key);
        }
    }

    @Test
    void without_loop_and_mass_the_turns_are_those_of_the_one_size_in_the_file() throws IOException {
        String one = "loop_in,mass_g,motor_turns,broke\n16,4,1216,yes\n16,4,1312,yes\n16,4,1408,yes\n16,4,1280,no\n";
        assertEquals(
                number(json("break-risk", THREE_BREAKS, "--at 40"), "probability"),
                number(json("break-risk", one, "--at 1280"), "probability"),
                1e-9);
        assertEquals(2, run("break-risk", one.replace("16,4,1280", "15,4,1280"), "--at 1280"));
        assertTrue(err.toString().contains("differ in size"), err.toString());
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
    }

    @Test
    void of_a_named_motor_the_last_wind_counts_and_stops_on_torque_are_shown_and_not_fitted() throws IOException {
        String text = "normalised_turns,broke,motor,stop\n36,no,R1,count\n38,yes,R1,breaking\n41,yes,R2,count\n"
                + "44,yes,R3,\n40,no,R4,count\n47,no,R5,torque\n39,yes,R6,torque\n";
        JsonNode risk = json("break-risk", text, "--at 40");
        JsonNode plain = json("break-risk", THREE_BREAKS, "--at 40");
        assertEquals(plain.get("probability"), risk.get("probability"));
        assertEquals(4, risk.get("winds").asInt());
        assertEquals(2, risk.get("torqueStopped").asInt());
    }

    @Test
    void the_risk_stays_a_probability_however_far_the_turns_lie() throws IOException {
        String close = "normalised_turns,broke\n40,yes\n40.0001,yes\n40.0002,yes\n39,no\n";
        for (String text : List.of(THREE_BREAKS, close)) {
            for (String at : List.of("0.001", "39", "40", "41", "1000000", "1e300")) {
                JsonNode risk = json("break-risk", text, "--at " + at);
                double low = number(risk, "low");
                double high = number(risk, "high");
                double said = number(risk, "probability");
                assertTrue(0 <= low && low <= said && said <= high && high <= 1, at + ": " + risk);
            }
        }
    }

    @Test
    void words_say_the_risk_the_interval_and_what_it_rests_on() throws IOException {
        assertEquals(0, run("break-risk", THREE_BREAKS, "--at 1280 --loop 16in --mass 4g"));
        assertTrue(out.toString().contains("40.00 normalised turns"), out.toString());
        assertTrue(out.toString().contains("90 % interval"), out.toString());
        assertTrue(out.toString().contains("3 breaks among 4 motors"), out.toString());
        assertEquals(0, run("break-risk", THREE_BREAKS.replace("38,yes\n", ""), "--at 40"));
        assertTrue(out.toString().contains("not known: too few breaks to tell"), out.toString());
    }

    @Test
    void the_curve_through_the_published_points_has_the_values_of_the_reference_library() throws IOException {
        // Fritsch and Carlson (1980), RPN 14; values and integral of SciPy 1.17 PchipInterpolator
        String text = "motor_turns,torque_nmm\n"
                + String.join("\n", published("rpn14.csv"))
                        .replace("2.76429e-5", "0.0000276429")
                        .replace("4.37498e-2", "0.0437498");
        for (String row : published("rpn14-values.csv")) {
            String[] cells = row.split(",");
            JsonNode curve = json("curve", text, "--at " + cells[1]);
            double expected = Double.parseDouble(cells[2]);
            assertEquals(expected, number(curve, "interpolatedNewtonMillimetres"), 1e-10, row);
            assertEquals(2 * Math.PI * 10.7648135054, number(curve, "torqueWorkMillijoules"), 1e-8);
            assertFalse(curve.has("energyMillijoules"), "no unwinding rows, no energy");
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "motor_turns,torque_inozf|0.5|3.53077590711302",
                "motor turns,torque (gf·cm)|0.5|0.04903325",
                "motor turns,torque (mN·m)|0.5|0.5",
                "motor turns;torque (in·ozf)|0,5|3.53077590711302"
            })
    void torque_comes_in_the_unit_of_its_header(String header, String half, double expected) throws IOException {
        String mark = header.contains(";") ? ";" : ",";
        String text = header + "\n0" + mark + half + "\n1000" + mark + half + "\n";
        // calc: 1 in·ozf = 7.06155181422604 N·mm, 1 gf·cm = 0.0980665 N·mm
        JsonNode curve = json("curve", text, "--at 500");
        assertEquals(expected, number(curve, "interpolatedNewtonMillimetres"), 1e-12);
        assertEquals(2 * Math.PI * 1000 * expected, number(curve, "torqueWorkMillijoules"), 1e-9);
    }

    @Test
    void energy_comes_from_the_unwinding_rows_and_torque_work_from_the_winding_rows() throws IOException {
        JsonNode curve = json("curve", READINGS, "--at 500 --mass 2g");
        assertEquals(2 * Math.PI * 3000, number(curve, "torqueWorkMillijoules"), 1e-9);
        assertEquals(3, number(curve, "interpolatedNewtonMillimetres"), 1e-12);
        assertEquals(2 * Math.PI * 2000, number(curve, "energyMillijoules"), 1e-9);
        assertEquals(2 * Math.PI * 1000, number(curve, "specificEnergyJoulesPerKilogram"), 1e-9);
        assertTrue(json("curve", READINGS, "")
                .get("specificEnergyJoulesPerKilogram")
                .isNull());
    }

    @Test
    void unwinding_alone_gives_its_own_torque_and_no_torque_work() throws IOException {
        String back = READINGS.replaceAll("(?m)^.*,wind\\n", "");
        JsonNode curve = json("curve", back, "--at 750 --mass 2g");
        assertTrue(curve.get("torqueWorkMillijoules").isNull());
        assertEquals(3, number(curve, "interpolatedNewtonMillimetres"), 1e-12);
        assertEquals(2 * Math.PI * 2000, number(curve, "energyMillijoules"), 1e-9);
    }

    @Test
    void words_name_the_torque_work_and_never_call_it_energy() throws IOException {
        assertEquals(0, run("curve", READINGS, "--at 500 --mass 2g"));
        assertTrue(out.toString().contains("torque work while winding"), out.toString());
        assertTrue(out.toString().contains("specific energy"), out.toString());
        assertEquals(0, run("curve", "motor_turns,torque_nmm\n0,0\n9,1\n", "--mass 2g"));
        assertTrue(out.toString().contains("not known: it comes from unwinding"), out.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "break-risk|normalized_turns,broke/40,yes|--at 40|line 1, column \"normalized_turns\": this column is not known",
                "break-risk|normalised_turns,mass_g,loop_in,broke/40,2,9,yes|--at 40|column \"normalised_turns\": this",
                "break-risk|normalised_turns,broke/forty,yes|--at 40|line 2, column \"normalised turns\": 'forty'",
                "break-risk|normalised_turns,broke/0,yes|--at 40|line 2, column \"normalised turns\": '0' is out",
                "break-risk|normalised_turns,broke/40,maybe|--at 40|line 2, column \"broke\": 'maybe'",
                "break-risk|normalised_turns,broke/40,|--at 40|line 2, column \"broke\": this is empty",
                "break-risk|normalised_turns/40|--at 40|line 1, column \"broke\": this column is missing",
                "break-risk|normalised_turns,broke,stop/40,yes,will|--at 40|line 2, column \"stop\": 'will'",
                "break-risk|normalised_turns,broke,motor/38,yes,R1/39,no,R1|--at 9|line 3, column \"motor\": 'R1' broke on"
                        + " line 2 and was wound again on line 3",
                "break-risk|loop_in,mass_g,motor_turns,broke/18,0,2300,no|--at 9|line 2, column \"mass\": '0 g' is out",
                "break-risk|loop,mass_g,motor_turns,broke/18,2,2300,no|--at 9|line 2, column \"loop\": '18' has no unit",
                "break-risk|loop_in,mass_g,motor_turns,broke/18,2,-3,no|--at 9|line 2, column \"motor turns\": '-3'",
                "break-risk|normalised_turns,broke/40,no,9|--at 40|line 2: cell 3 ('9') stands under no header",
                "break-risk|normalised_turns,broke/40,no|--at 0|--at must be more than zero",
                "break-risk|normalised_turns,broke/40,no|--at -4|--at must be more than zero",
                "break-risk|normalised_turns,broke/40,no|--at NaN|--at must be more than zero",
                "break-risk|normalised_turns,broke/40,no|--at many|--at",
                "break-risk|normalised_turns,broke/40,no||--at",
                "break-risk|normalised_turns,broke/40,no|--at 9 --loop 18in|both --loop and --mass",
                "break-risk|normalised_turns,broke/40,no|--at 9 --loop 18 --mass 2g|--loop: '18' has no unit",
                "break-risk|normalised_turns,broke/40,no|--at 9 --loop 18in --mass 2in|--mass: '2in'",
                "break-risk|normalised_turns,broke/40,no|--at 9 --loop 18in --mass 0g|must be more than zero",
                "break-risk||--at 40|the file is empty",
                "curve|motor_turns,torque_inozf/0,0/9,-1||line 3, column \"torque\": '-1' is below zero",
                "curve|motor_turns,torque_inozf/0,0/x,1||line 3, column \"motor turns\": 'x' is not a number",
                "curve|motor_turns,torque (kg)/0,0/9,1||line 1, column \"torque\": the header has the unknown unit",
                "curve|motor_turns,torque/0,0/9,1 mNm||line 2, column \"torque\": '0' has no unit",
                "curve|motor_turns,torque_nmm,phase/0,0,wind/9,1,||line 3, column \"phase\": this is empty",
                "curve|motor_turns,torque_nmm,phase/0,0,wind/9,1,hold||line 3, column \"phase\": 'hold'",
                "curve|motor_turns,torque_nmm/9,1/9,2||2 different turns at least, but of winding there are 1",
                "curve|motor_turns,torque_nmm,phase/0,0,wind/9,1,wind/9,1,unwind||of unwinding there are 1",
                "curve|motor_turns,torque_nmm/0,0/9,1|--at 10|--at must lie within the readings, 0 to 9 motor turns",
                "curve|motor_turns,torque_nmm/0,0/9,1|--at NaN|--at must lie within",
                "curve|motor_turns,torque_nmm/0,0/9,1|--mass 0g|--mass must be more than zero",
                "curve|motor_turns,torque_nmm/0,0/9,1|--mass 2|--mass: '2' has no unit",
                "curve|motor_turns,torque_nmm/0,\"0/9,1||quotes"
            })
    void a_bad_value_is_one_clear_line_and_exit_2(String command, String rows, String options, String said)
            throws IOException {
        String text = rows == null ? "" : rows.replace('/', '\n');
        assertEquals(2, run(command, text, options == null ? "" : options), out.toString());
        assertTrue(err.toString().contains(said), err.toString());
        assertEquals(1, err.toString().strip().lines().count(), err.toString());
        assertEquals("", out.toString());
    }

    @Test
    void every_error_of_a_file_is_named_one_line_each() throws IOException {
        assertEquals(2, run("break-risk", "normalised_turns,broke\n0,yes\n40,no\nx,perhaps\n", "--at 40"));
        assertEquals(3, err.toString().strip().lines().count(), err.toString());
    }

    @ParameterizedTest
    @CsvSource({"no-such.csv,There is no file", "., is a folder"})
    void a_file_that_is_not_there_is_one_clear_line_and_exit_2(String name, String said) {
        for (String command : List.of("break-risk %s --at 40", "curve %s")) {
            String[] args = command.formatted(folder.resolve(name)).split(" ");
            err.getBuffer().setLength(0);
            assertEquals(2, Skeinday.run(args, new PrintWriter(out, true), new PrintWriter(err, true)));
            assertTrue(err.toString().contains(said), err.toString());
            assertEquals(1, err.toString().strip().lines().count(), err.toString());
        }
    }

    @ParameterizedTest
    @CsvSource({"break-risk,--at 2300 --loop 18.5in --mass 1.7g", "curve,--at 1200 --mass 1.7g"})
    void help_shows_an_example_and_the_columns(String command, String example) throws IOException {
        assertEquals(0, run(command, "", "--help"));
        assertTrue(out.toString().contains(example), out.toString());
        assertTrue(out.toString().contains("motor_turns,"), out.toString());
        assertFalse(out.toString().contains("%%"), out.toString());
    }
}
