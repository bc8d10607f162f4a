package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.fault.CalledForTests;

/** Every form of the table of routes is posted twice as it is, as a tablet does whose answer was lost. */
@Timeout(400)
class RepeatWebTest {
    /**
     * Stop the program; make a new PIN, which is shown once; give the right to repeat it away; taps have numbers of their
     * own.
     */
    private static final Set<String> LEFT_OUT =
            Set.of("/laptop/stop", "/laptop/pin", "/laptop/lend", "/taps", "/taps/file");

    /** Of those in the table: as many as the staged days let through, less a few for the day's chance. */
    private static final int LEAST_TAKEN = 26;

    @TempDir
    Path root;

    private final List<String> wrong = new ArrayList<>();
    private final Set<String> taken = new TreeSet<>();

    @Test
    void a_form_that_is_sent_twice_is_answered_alike_and_counts_once() throws Exception {
        for (Staged stage : Staged.values()) {
            try (var house = House.at(root.resolve(stage.name()), stage)) {
                var bodies = new Bodies(house);
                for (String path : forms()) {
                    twice(house, path, bodies);
                }
            }
        }
        System.out.println("Forms that were taken: " + taken.size() + " of " + forms().size() + " " + taken);
        assertEquals(List.of(), wrong);
        assertTrue(taken.size() >= LEAST_TAKEN, "only " + taken + " were taken at all: the test says little");
    }

    /** A flight of practice is noted with the moment at which it comes, which a repeat does not share. */
    @Test
    void a_flight_of_practice_that_is_sent_twice_is_one_flight() throws Exception {
        try (var house = new House(root.resolve("day"))) {
            house.laptop.form("/practice/begin", Map.of());
            Map<String, String> flight = new LinkedHashMap<>(new Bodies(house).of("/practice"));
            String before = house.head();
            HttpResponse<String> first = house.laptop.form("/practice", flight);
            assertEquals(200, first.statusCode(), first.body());
            assertNotEquals(before, house.head());
            String once = house.head();
            Thread.sleep(1_100); // the flight's moment is in whole seconds
            HttpResponse<String> second = house.laptop.form("/practice", flight);
            assertEquals(200, second.statusCode(), second.body());
            assertEquals(once, house.head());
        }
    }

    /** They are the folder's and not the record's: each has to know its repeat by itself. */
    @Test
    void codes_are_made_once_by_a_form_that_is_sent_twice() throws Exception {
        try (var house = new House(root.resolve("day"))) {
            for (String path : List.of("/codes/today", "/codes/new")) {
                Map<String, String> press = Map.of("act", house.laptop.newId());
                HttpResponse<String> first = house.laptop.form(path, press);
                assertEquals(200, first.statusCode(), first.body());
                String codes = codes(house);
                HttpResponse<String> second = house.laptop.form(path, press);
                assertEquals(first.body(), second.body(), path);
                assertEquals(codes, codes(house), path);
                house.laptop.form(path, Map.of());
                assertNotEquals(codes, codes(house), "another press is another one");
                assertEquals(
                        400,
                        house.laptop.form(path, Map.of("act", "none")).statusCode(),
                        "without a number it could not be known");
            }
        }
    }

    @Test
    void a_device_that_is_ended_twice_by_one_press_is_ended_once_whatever_codes_were_made_between() throws Exception {
        try (var house = new House(root.resolve("day"))) {
            house.joined("helper");
            String path = "/devices/"
                    + CalledForTests.value(house.laptop.get("/devices").body(), "/devices/([^/\"]+)/end") + "/end";
            Map<String, String> press = Map.of("act", house.laptop.newId(), "codes", "new");
            assertEquals(204, house.laptop.form(path, press).statusCode());
            String once = house.head();
            String codes = codes(house);
            assertEquals(204, house.laptop.form(path, press).statusCode());
            assertEquals(codes, codes(house));
            house.laptop.form("/codes/new", Map.of());
            assertEquals(204, house.laptop.form(path, press).statusCode());
            assertEquals(once, house.head());
        }
    }

    private static String codes(House house) throws IOException {
        return Files.readString(house.folder.resolve("join-code"))
                + Files.readString(house.folder.resolve("typed-codes"));
    }

    private void twice(House house, String path, Bodies bodies) throws Exception {
        Map<String, String> fields = bodies.of(path);
        String before = house.head();
        HttpResponse<String> first = house.laptop.form(bodies.path(path), fields);
        String once = house.head();
        HttpResponse<String> second = house.laptop.form(bodies.path(path), fields);
        if (!once.equals(before)) {
            taken.add(path);
            alike(path, first, second);
        }
        if (first.statusCode() >= 500 || first.statusCode() != second.statusCode() && !once.equals(before)) {
            wrong.add(path + " " + fields + ": " + first.statusCode() + ", then " + second.statusCode() + " "
                    + second.body().replaceAll("(?s).*<main", ""));
        }
        if (!once.equals(house.head())) {
            wrong.add(path + " " + fields + ": counted twice");
        }
    }

    /** But for the moments and numbers of acts that each page is made with. */
    private void alike(String path, HttpResponse<String> first, HttpResponse<String> second) {
        String one = withoutMoments(first.body());
        String other = withoutMoments(second.body());
        if (!one.equals(other)) {
            int at = 0;
            while (at < Math.min(one.length(), other.length()) && one.charAt(at) == other.charAt(at)) {
                at++;
            }
            wrong.add(path + " answers otherwise: " + part(one, at) + " | then | " + part(other, at));
        }
    }

    private static String part(String text, int at) {
        return text.substring(Math.max(0, at - 80), Math.min(text.length(), at + 80));
    }

    private static String withoutMoments(String body) {
        return body.replaceAll("[0-9a-f]{32}", "ID")
                .replaceAll("\\d{13}", "MOMENT")
                .replaceAll("\\d{1,2}:\\d{2}(:\\d{2})?", "TIME")
                .replaceAll("\\d+ (s|min)\\b", "WAIT");
    }

    private static List<String> forms() throws IOException {
        try (var table = RepeatWebTest.class.getResourceAsStream("/access/routes.csv")) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> line.startsWith("POST,"))
                    .map(line -> line.split(",")[1])
                    .filter(path ->
                            !LEFT_OUT.contains(path) && !path.startsWith("/import") && !path.startsWith("/join"))
                    .toList();
        }
    }

    /** Files have their own way in: the answer of a repeat is the one of the first. */
    @Test
    void files_that_are_sent_twice_are_taken_once_and_said_to_be() throws Exception {
        try (var house = new House(root.resolve("day"))) {
            byte[] csv = "batch,K\nNew lot,42\n".getBytes(StandardCharsets.UTF_8);
            String act = house.laptop.newId();
            var first = house.laptop.upload("/import/take", "batches.csv", csv, Map.of("act", act));
            assertTrue(first.body().contains("All of it is in the record now"), first.body());
            String once = house.head();
            var second = house.laptop.upload("/import/take", "batches.csv", csv, Map.of("act", act));
            assertEquals(first.body(), second.body());
            assertEquals(once, house.head());
            String told = house.laptop.get("/import/told?act=" + act).body();
            assertTrue(told.contains("All of it is in the record now"), told);
            String none =
                    house.laptop.get("/import/told?act=" + house.laptop.newId()).body();
            assertTrue(none.contains("Nothing was taken"), none);
        }
    }

    @Test
    void a_history_that_is_sent_twice_is_taken_once() throws Exception {
        try (var house = new House(root.resolve("day"))) {
            Map<String, String> form = new LinkedHashMap<>(Map.of(
                    "act", house.laptop.newId(),
                    "file", "flights.csv",
                    "text", "Date,Aircraft,Rubber,Duration\n2026-04-01 18:00,Reed One,A1,1:35.2\n",
                    "same-event", "Saltmarsh Practice Evening",
                    "same-valid", "yes"));
            String[] meanings = {"flown", "model", "motor", "time"};
            for (int i = 0; i < meanings.length; i++) {
                form.put("meaning-" + i, meanings[i]);
                form.put("unit-" + i, "");
            }
            HttpResponse<String> first = house.laptop.form("/import/history/take", form);
            assertEquals(200, first.statusCode(), first.body());
            assertTrue(first.body().contains("in the record now"), first.body());
            String once = house.head();
            HttpResponse<String> second = house.laptop.form("/import/history/take", form);
            assertEquals(200, second.statusCode(), second.body());
            assertEquals(first.body(), second.body());
            assertEquals(once, house.head());
        }
    }
}
