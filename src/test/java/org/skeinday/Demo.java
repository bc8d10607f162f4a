package org.skeinday;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.skeinday.cli.DemoDay;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.PinHash;
import org.skeinday.platform.record.ActStore;

/** The demo's event in a data folder, imported once for all tests of a run and copied to each. */
public final class Demo {
    /** The coach's in every copy; its hash is made once a run, with the fewer rounds that tests' waits have. */
    public static final String PIN = "274613";

    private static final Path TEMPLATE = make();
    private static final AtomicLong JOININGS = new AtomicLong();

    private Demo() {}

    private static Path make() {
        try {
            Path folder = Files.createTempDirectory("skeinday-demo").resolve("day");
            DemoDay.load(folder, Clock.systemDefaultZone(), new SecureRandom());
            pin(folder, PinHash.of(PIN, pace().pinRounds(), new SecureRandom()));
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Pace pace() {
        return Pace.normal().dividedBy(20);
    }

    private static void pin(Path folder, String hash) throws IOException {
        try (ActStore record = ActStore.open(folder, Catalogue.projection(), Clock.systemDefaultZone())) {
            record.people().keepPin(hash);
        }
    }

    /** Copies the demo's data folder to {@code folder}; its first window opens 20 minutes after the run's start. */
    public static Path into(Path folder) throws IOException {
        Files.createDirectories(folder);
        try (Stream<Path> files = Files.list(TEMPLATE)) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        return folder;
    }

    /** The program on a fresh copy, on any free port, with its waits shortened. */
    public static App start(Path folder) throws IOException {
        return startEmpty(into(folder));
    }

    /** The same, with acts that can be undone for as long as on a day: a slow machine presses late. */
    public static App startWithUndo(Path folder) throws IOException {
        Pace quick = pace();
        Pace pace = new Pace(
                quick.hintGather(),
                quick.heartbeat(),
                quick.watchdog(),
                quick.retryMost(),
                quick.slowClient(),
                quick.answer(),
                Pace.normal().undo(),
                quick.clockLook(),
                quick.pinRounds(),
                quick.wallTurn(),
                quick.close());
        App.Settings settings = new App.Settings(into(folder), 0, false, pace);
        return App.start(settings, Clock.systemDefaultZone(), new SecureRandom());
    }

    /** The same as at the first start in a folder: it makes the coach's PIN and tells it once. */
    public static App startFirst(Path folder) throws IOException {
        pin(into(folder), "");
        return startEmpty(folder);
    }

    /** Gives a folder that was filled in another way the coach's PIN of the demo. */
    public static Path withPin(Path folder) throws IOException {
        pin(folder, PinHash.of(PIN, pace().pinRounds(), new SecureRandom()));
        return folder;
    }

    /** The program on whatever is in {@code folder}, a new one too. */
    public static App startEmpty(Path folder) throws IOException {
        return startEmpty(folder, Clock.systemDefaultZone());
    }

    /** The same by a clock that a test sets. */
    public static App startEmpty(Path folder, Clock clock) throws IOException {
        return App.start(new App.Settings(folder, 0, false, pace()), clock, new SecureRandom());
    }

    /** A device that has joined the program. @param pin of the coach, empty for every other role */
    public static Visitor joined(App app, String role, String pin, long seed) throws IOException, InterruptedException {
        return joined(app, role, pin, seed, "");
    }

    /** The same, used by a person. @param person id; empty for nobody */
    public static Visitor joined(App app, String role, String pin, long seed, String person)
            throws IOException, InterruptedException {
        String token = app.joinLink().substring(app.joinLink().indexOf('#') + 1);
        boolean needsCode = role.equals("timekeeper") || role.equals("captain");
        String code = needsCode ? CodeOfDay.handedOut(app.port()) : "";
        Map<String, String> form =
                Map.of("token", token, "code", code, "role", role, "person", person, "pin", pin, "act", oneMore());
        HttpResponse<String> answer = new Visitor(app.port(), "", seed).form("/join", form);
        if (answer.statusCode() != 204) {
            throw new AssertionError(answer.statusCode() + " " + answer.body());
        }
        String cookie = answer.headers().firstValue("Set-Cookie").orElseThrow();
        return new Visitor(app.port(), cookie.replaceFirst(";.*", ""), seed);
    }

    /** Each device makes a number of its own for its joining. */
    private static String oneMore() {
        return String.format("%032x", JOININGS.incrementAndGet());
    }

    /** Id of a person of the demo's crew. */
    public static String person(App app, String name) {
        return app.names().entrySet().stream()
                .filter(e -> e.getValue().equals(name))
                .findFirst()
                .orElseThrow()
                .getKey();
    }
}
