package org.skeinday.load;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.record.Json;
import org.skeinday.units.FlightTime;

/**
 * 100 devices, 20 acts a second in all: how long until <i>Saved</i>, and until what changed is seen on the 99 others,
 * each beside the bare least of the same run; a hall that joins in one moment; a long run with devices that come and go,
 * whose memory and streams are watched. Prints the table of figures, asserts none.
 *
 * <p>{@code -Dskeinday.load.soak=1800} for half an hour; 60 seconds when left out.
 */
class LoadBenchmark {
    private static final int DEVICES = 100;
    private static final int PER_SECOND = 20;
    private static final int SECONDS = Integer.getInteger("skeinday.load.seconds", 30);
    private static final int CHANGES = Integer.getInteger("skeinday.load.changes", 40);
    private static final int TURN_S = 3;
    private static final String PART = "/now";

    @TempDir
    Path root;

    private static final int SOAK = Integer.getInteger("skeinday.load.soak", 60);
    private static final long MEAN_STAY_MS = 60_000;

    private final LoadFigures figures = new LoadFigures();
    private final HttpClient client = Visitor.client();
    private final AtomicLong durations = new AtomicLong(1);

    @Test
    void saved_and_seen_beside_the_bare_least() throws Exception {
        try (Hall hall = new Hall(root, DEVICES);
                Bare bare = new Bare(root, part(hall))) {
            System.out.println(Cores.bindLoad());
            Cores.bindServer(hall.memory().pid());
            Cores.bindServer(bare.pid());
            byte[] line = lastLine();
            figures.add("start to first answer", "≤ 3 s", String.format(Locale.ROOT, "%.2f s", hall.startSeconds()));
            JoinStorm storm = new JoinStorm(hall, bare, client, DEVICES);
            storm.measure(figures);
            try (Onlookers ours = onlookers(hall, storm.cookies());
                    Onlookers least = onlookers(bare)) {
                ours.awaitOpen(); // every page is open and fetches what changed, as on a day
                least.awaitOpen();
                saved(hall, bare, line, 6); // to warm up
                saved(saved(hall, bare, line, SECONDS));
                seen(hall, ours, bare, least);
            }
            soak(hall);
            System.out.println(figures.text());
        }
    }

    /** The same load for long, while devices leave and come back at random. */
    private void soak(Hall hall) throws Exception {
        Memory memory = hall.memory();
        Percentiles saved = new Percentiles();
        AtomicLong most = new AtomicLong();
        List<Long> alive = new ArrayList<>();
        try (Onlookers restless = new Onlookers(client)) {
            SplittableRandom random = new SplittableRandom(20_261_129);
            for (Hall.Timekeeper one : hall.timekeepers()) {
                String server = "http://localhost:" + hall.port();
                restless.addRestless(
                        server + "/live?topics=attempts", server + PART, one.cookie(), MEAN_STAY_MS, random.split());
            }
            restless.awaitOpen();
            for (int part = 0; part < 6; part++) {
                load(hall, saved, SOAK / 6);
                most.accumulateAndGet(memory.residentMb(), Math::max);
                alive.add(memory.aliveKb());
            }
            figures.add("soak of " + SOAK + " s: Saved", "≤ 150 ms", 0.95, saved, null);
            figures.add("soak: Saved", "≤ 500 ms", 0.99, saved, null);
            figures.add(
                    "soak: streams left by devices, requests that failed",
                    "none fails",
                    restless.drops() + ", " + restless.failures());
            Thread.sleep(Pace.normal().heartbeat().multipliedBy(2).toMillis()); // who has gone is seen at a heartbeat
            figures.add(
                    "soak: threads of open streams",
                    "100 and who is just away",
                    String.valueOf(memory.threads("live")));
        }
        long least = alive.stream().mapToLong(i -> i).min().orElseThrow();
        long top = alive.stream().mapToLong(i -> i).max().orElseThrow();
        figures.add("resident, -Xmx192m", "≤ 300 MB", most + " MB");
        figures.add(
                "alive on the heap, six times over the soak",
                "± 10 %",
                String.format(Locale.ROOT, "%s kB, ± %.0f %%", alive, 100.0 * (top - least) / (top + least)));
    }

    private void load(Hall hall, Percentiles waits, int seconds) throws InterruptedException {
        Due.evenly(i -> post(hall.timekeepers().get(i % DEVICES)), waits, PER_SECOND, seconds);
    }

    private void load(Bare bare, byte[] line, Percentiles waits, int seconds) throws InterruptedException {
        Due.evenly(i -> post(bare.at("/append"), line), waits, PER_SECOND, seconds);
    }

    private Onlookers onlookers(Bare bare) {
        Onlookers least = new Onlookers(client);
        for (int i = 0; i < DEVICES - 1; i++) {
            least.add(bare.at("/stream"), bare.at("/page"), "");
        }
        return least;
    }

    /** Viewers, who are told every watch's time: a timekeeper hears no other's before all have theirs. */
    private Onlookers onlookers(Hall hall, List<String> viewers) {
        Onlookers ours = new Onlookers(client);
        String server = "http://localhost:" + hall.port();
        for (String viewer : viewers.subList(0, DEVICES - 1)) {
            ours.add(server + "/live?topics=attempts", server + PART, viewer);
        }
        return ours;
    }

    /** The last called attempt is the one that the page shows: its first watch changes it. */
    private static Hall.Timekeeper shown(Hall hall) {
        return hall.timekeepers().get(DEVICES - 2);
    }

    /** The fresh part of the page Now as a viewer's device gets it. */
    private static byte[] part(Hall hall) throws IOException, InterruptedException {
        return hall.visitor(hall.join("viewer", 4_000), 4_000)
                .get(PART, "HX-Request", "true")
                .body()
                .getBytes(UTF_8);
    }

    private byte[] lastLine() throws IOException {
        List<String> lines = Files.readAllLines(root.resolve("day/journal.jsonl"));
        return (lines.get(lines.size() - 1) + "\n").getBytes(UTF_8);
    }

    /** Waits for <i>Saved</i>, and the processor time that the server took meanwhile, an act. */
    private record Saved(Percentiles waits, Percentiles bareWaits, double processorMs, double bareProcessorMs) {}

    private void saved(Saved saved) {
        System.out.println("Saved, forced to disk      " + saved.waits().text());
        System.out.println("bare append and force      " + saved.bareWaits().text());
        System.out.println("ratio                      " + saved.waits().over(saved.bareWaits()));
        figures.add("Saved with 99 looking on", "≤ 3 ×", 0.5, saved.waits(), saved.bareWaits());
        figures.add("Saved with 99 looking on", "≤ 150 ms, ≤ 3 ×", 0.95, saved.waits(), saved.bareWaits());
        figures.add("Saved with 99 looking on", "≤ 500 ms", 0.99, saved.waits(), saved.bareWaits());
        figures.add("processor time an act with 99 looking on", "", saved.processorMs(), saved.bareProcessorMs(), "ms");
    }

    /**
     * Ours and the bare one in turns of a few seconds, the pages of each fetching what changed there; each act due at its
     * own moment whether the one before has been answered or not.
     */
    private Saved saved(Hall hall, Bare bare, byte[] line, int seconds) throws InterruptedException {
        Percentiles waits = new Percentiles();
        Percentiles bareWaits = new Percentiles();
        Memory ours = hall.memory();
        Memory least = new Memory(bare.pid());
        long taken = ours.processorMs();
        long bareTaken = least.processorMs();
        for (int turn = 0; turn < seconds / TURN_S; turn++) {
            load(hall, waits, TURN_S);
            load(bare, line, bareWaits, TURN_S);
        }
        long acts = waits.count();
        if (acts < seconds / TURN_S * TURN_S * PER_SECOND || bareWaits.count() < acts) {
            throw new IllegalStateException("Some were not answered: " + waits.text() + ", " + bareWaits.text());
        }
        return new Saved(
                waits,
                bareWaits,
                (double) (ours.processorMs() - taken) / acts,
                (double) (least.processorMs() - bareTaken) / acts);
    }

    private void post(Hall.Timekeeper timekeeper) throws IOException, InterruptedException {
        ObjectNode content = Json.MAPPER.createObjectNode();
        content.put("attempt", timekeeper.attempt()).put("slot", timekeeper.slot());
        content.put("ms", durations.getAndIncrement());
        Visitor device = timekeeper.visitor();
        var answers =
                device.taps(Json.MAPPER.createArrayNode().add(Visitor.tap(device.newId(), "watch.landing", content)));
        if (!answers.path(0).path("state").asText().equals("saved")) {
            throw new IOException(answers.toString());
        }
    }

    private void post(String address, byte[] body) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(address))
                .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                .build();
        client.send(request, HttpResponse.BodyHandlers.discarding());
    }

    private void seen(Hall hall, Onlookers ours, Bare bare, Onlookers least) throws Exception {
        for (int i = 0; i <= CHANGES; i++) {
            if (i == 1) { // the first finds the hall still busy with what came before
                ours.forget();
                least.forget();
            }
            durations.addAndGet(10); // another hundredth
            String words = new FlightTime(durations.get()).text(2);
            ours.measure(words, () -> post(shown(hall)));
            least.measure("", () -> post(bare.at("/tell"), new byte[0]));
        }
        say("told", ours.told(), least.told());
        say("seen", ours.seen(), least.seen());
        figures.add("a change told to 99 others", "", 0.95, ours.told(), least.told());
        figures.add("a change seen on 99 others", "≤ 250 ms, ≤ 2 ×", 0.95, ours.seen(), least.seen());
    }

    private static void say(String what, Percentiles ours, Percentiles least) {
        System.out.println("change " + what + " on 99 others  " + ours.text() + ", of which 100 ms gather hints");
        System.out.println(
                "bare stream" + (what.equals("seen") ? " and page       " : "                ") + least.text());
        System.out.println("ratio                      " + ours.over(least));
    }
}
