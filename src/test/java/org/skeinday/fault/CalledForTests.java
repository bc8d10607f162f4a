package org.skeinday.fault;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.Visitor;
import org.skeinday.platform.record.Json;
import org.skeinday.steps.Step;

/** The first entry of the demo called, with the laptop as its first watch: what many taps can be sent to. */
public final class CalledForTests {
    private CalledForTests() {}

    /** Calls the first entry and takes no watch. */
    public static void callOnly(Visitor laptop) throws IOException, InterruptedException {
        String entry = value(laptop.get("/now").body(), "name=\"entry\" value=\"([^\"]+)\"");
        expect200(laptop.form("/attempt/call", Map.of("entry", entry)));
    }

    /** @return the attempt's id */
    public static String call(Visitor laptop) throws IOException, InterruptedException {
        callOnly(laptop);
        return watched(laptop);
    }

    /** The same with the motor that comes first for it. @return the attempt's id */
    public static String callWithItsMotor(Visitor laptop) throws IOException, InterruptedException {
        String now = laptop.get("/now").body();
        String entry = value(now, "name=\"entry\" value=\"([^\"]+)\"");
        String motor = value(now, "(?s)name=\"motor\".*?<option value=\"([^\"]+)\"");
        expect200(laptop.form("/attempt/call", Map.of("entry", entry, "motor", motor)));
        return watched(laptop);
    }

    private static String watched(Visitor laptop) throws IOException, InterruptedException {
        String attempt = value(laptop.get("/timing/part").body(), "name=\"attempt\" value=\"([^\"]+)\"");
        expect200(laptop.form("/watch/take", Map.of("attempt", attempt, "slot", "1")));
        return attempt;
    }

    /**
     * Winding waits for the checks: here the supervising adult answers for all but eyes and line, which are ticked, the line last.
     *
     * @return the attempt's id
     */
    public static String letWind(Visitor laptop) throws IOException, InterruptedException {
        String attempt = value(laptop.get("/now").body(), "name=\"attempt\" value=\"([^\"]+)\"");
        letWind(laptop, attempt);
        return attempt;
    }

    /** The same at the laptop of a program at this port. */
    public static String letWind(int port) throws IOException, InterruptedException {
        return letWind(new Visitor(port, "", System.nanoTime()));
    }

    /** The same for an attempt that is known. */
    public static void letWind(Visitor laptop, String attempt) throws IOException, InterruptedException {
        if (!laptop.get("/now?attempt=" + attempt).body().contains("Winding waits for")) {
            return; // nothing is asked of other teams
        }
        lookAgain(laptop, attempt);
    }

    /** Another wind of the same attempt asks for all of it again. */
    public static void lookAgain(Visitor device, String attempt) throws IOException, InterruptedException {
        expect200(device.form(
                "/checks/gate",
                Map.of("attempt", attempt, "adult", "Mrs Grebe", "passed", "checked by word of mouth")));
        tick(device, attempt, Step.EYES);
        tick(device, attempt, Step.LINE);
    }

    /** One item before winding, for which nobody answers. */
    public static void tick(Visitor device, String attempt, String step) throws IOException, InterruptedException {
        JsonNode answer = device.tap(
                "step.tick",
                Json.MAPPER
                        .createObjectNode()
                        .put("list", "before-winding")
                        .put("subject", attempt)
                        .put("step", step)
                        .put("revision", 2));
        if (!answer.path("state").asText().equals("saved")) {
            throw new AssertionError(answer.toString());
        }
    }

    /** The first group of the first place that fits. */
    public static String value(String html, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(html);
        if (!found.find()) {
            throw new AssertionError("No " + pattern + " in " + html);
        }
        return found.group(1);
    }

    private static void expect200(HttpResponse<String> answer) {
        if (answer.statusCode() != 200) {
            throw new AssertionError(answer.statusCode() + " " + answer.body());
        }
    }
}
