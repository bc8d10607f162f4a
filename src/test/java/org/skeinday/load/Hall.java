package org.skeinday.load;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.skeinday.CodeOfDay;
import org.skeinday.Program;
import org.skeinday.Visitor;

/**
 * The real program in a process of its own, as on a laptop with {@code -Xmx192m}, with an event of many entries, all
 * called, each timed by two devices that have joined.
 */
final class Hall implements AutoCloseable {
    /** A device that has joined, and the watch that is its own. */
    record Timekeeper(Visitor visitor, String cookie, String attempt, int slot) {}

    /** All stages of compiling, as it lives long; {@code -Dskeinday.load.java=-XX:+UseSerialGC} to try others. */
    private static final List<String> JAVA =
            List.of(("-XX:TieredStopAtLevel=4 " + System.getProperty("skeinday.load.java", ""))
                    .strip()
                    .split(" "));

    private static final Pattern ENTRY = Pattern.compile("name=\"entry\" value=\"([^\"]+)\"");

    private final Program program;
    private final int port = Program.freePort();
    private final String token;
    private final String code;
    private final double startSeconds;
    private final HttpClient client = Visitor.client();
    private final List<Timekeeper> timekeepers = new ArrayList<>();

    /** @param devices an even number */
    Hall(Path root, int devices) throws Exception {
        Path files = Files.createDirectories(root.resolve("files"));
        write(files, devices / 2);
        Path data = root.resolve("day");
        if (Program.run("import", files.toString(), "--data", data.toString()) != 0) {
            throw new IOException("The event could not be brought in");
        }
        long begun = System.nanoTime();
        program = Program.serve(data, port, JAVA);
        new Visitor(port, "", 1).get("/");
        startSeconds = (System.nanoTime() - begun) / 1e9;
        token = Files.readAllLines(data.resolve("join-code")).get(0);
        code = CodeOfDay.handedOut(port);
        Visitor laptop = new Visitor(port(), "", 1);
        for (String entry : entries(laptop)) {
            String act = laptop.newId();
            expect(200, laptop.form("/attempt/call", Map.of("act", act, "entry", entry)));
            for (int slot = 1; slot <= 2; slot++) {
                timekeepers.add(takeWatch(act + "-0", slot));
            }
        }
    }

    private static void write(Path files, int entries) throws IOException {
        String day = LocalDate.now(Clock.systemDefaultZone()).toString();
        StringBuilder named = new StringBuilder("event,entry,team,division,own,models\n");
        for (int i = 1; i <= entries; i++) {
            named.append("Hall Day,Entry ").append(i).append(",Team,open,no,\n");
        }
        Files.writeString(files.resolve("entries.csv"), named);
        Files.writeString(
                files.resolve("event.csv"),
                "name,kind,day,hall,ceiling (m),attempts,window minutes,score,best of,timekeepers,take,if two,round,to,"
                        + "round watches first,minimum,winder ratio,lane (m)\nHall Day,hosting," + day
                        + ",Hall,8,3,12,sum,2,2,middle,longer,down,0.1,no,,10,4\n");
    }

    private static List<String> entries(Visitor laptop) throws IOException, InterruptedException {
        List<String> ids = new ArrayList<>();
        Matcher found = ENTRY.matcher(laptop.get("/now").body());
        while (found.find()) {
            if (!ids.contains(found.group(1))) {
                ids.add(found.group(1));
            }
        }
        return ids;
    }

    /** @return the cookie of a device that joins now */
    String join(String role, long seed) throws IOException, InterruptedException {
        Visitor joiner = new Visitor(client, port(), "", seed);
        Map<String, String> form = new HashMap<>(Map.of("token", token, "code", code, "role", role, "person", ""));
        HttpResponse<String> joined = joiner.form("/join", form);
        return joined.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
    }

    private Timekeeper takeWatch(String attempt, int slot) throws IOException, InterruptedException {
        String cookie = join("timekeeper", 2 + timekeepers.size());
        Visitor device = new Visitor(client, port(), cookie, 1_000 + timekeepers.size());
        expect(200, device.form("/watch/take", Map.of("attempt", attempt, "slot", String.valueOf(slot))));
        return new Timekeeper(device, cookie, attempt, slot);
    }

    private static void expect(int status, HttpResponse<String> answer) throws IOException {
        if (answer.statusCode() != status) {
            throw new IOException(answer.statusCode() + " " + answer.body());
        }
    }

    int port() {
        return port;
    }

    Visitor visitor(String cookie, long seed) {
        return new Visitor(client, port, cookie, seed);
    }

    Memory memory() {
        return new Memory(program.pid());
    }

    /** From the command to the first answer. */
    double startSeconds() {
        return startSeconds;
    }

    List<Timekeeper> timekeepers() {
        return timekeepers;
    }

    @Override
    public void close() throws InterruptedException {
        program.close();
    }
}
