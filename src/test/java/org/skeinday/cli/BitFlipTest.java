package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Catalogue;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.record.Damaged;
import org.skeinday.platform.record.Json;
import org.skeinday.platform.record.Verify;

/**
 * One bit of a record of 200 acts and its database is flipped, a thousand times: what is wrong is named, or everything
 * that can be read is what was saved. Never an official time that is silently another one.
 *
 * <p>Each flip of the journal is verified; of those in the database every {@code skeinday.flips.every}-th goes through a
 * whole start and the export (50 in the build, 1 in a long run), the others through the seal that the start asks.
 */
@Timeout(1800)
class BitFlipTest {
    private static final int FLIPS = 1_000;
    private static final int ACTS = 200;
    private static final int EVERY = Integer.getInteger("skeinday.flips.every", 50);
    private static final long SEED = Long.getLong("skeinday.seed", 20_261_126L);

    @TempDir
    Path root;

    private Path day;
    private byte[] journal;
    private byte[] database;
    private Map<String, String> saved;
    private final SplittableRandom random = new SplittableRandom(SEED);

    @BeforeEach
    void flyOneDay() throws Exception {
        day = root.resolve("day");
        try (App app = Demo.start(day)) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            String attempt = CalledForTests.call(laptop);
            for (int from = 0; from < ACTS; from += 50) {
                ArrayNode taps = Json.MAPPER.createArrayNode();
                for (int i = from; i < from + 50; i++) {
                    ObjectNode landing = Json.MAPPER.createObjectNode();
                    landing.put("attempt", attempt).put("slot", 1).put("ms", 61_000 + i * 10);
                    taps.add(Visitor.tap(laptop.newId(), "watch.landing", landing));
                }
                laptop.taps(taps)
                        .forEach(answer ->
                                assertEquals("saved", answer.path("state").asText()));
            }
        }
        saved = Exchange.write(day, new TakenOut.Choice(), Clock.systemDefaultZone())
                .texts();
        assertTrue(saved.get("readings.csv").lines().count() > ACTS, "each landing can be read");
        journal = Files.readAllBytes(day.resolve("journal.jsonl"));
        database = Files.readAllBytes(day.resolve("skeinday.mv.db"));
    }

    @Test
    void a_thousand_flipped_bits_are_named_or_harmless() throws Exception {
        byte[] seal = Files.readAllBytes(day.resolve("database-seal"));
        int inJournal = 0;
        int started = 0;
        for (int flip = 0; flip < FLIPS; flip++) {
            Files.write(day.resolve("database-seal"), seal);
            if (random.nextBoolean()) {
                inJournal++;
                flipJournal(flip);
            } else if (flip % EVERY == 0) {
                started++;
                flipDatabase(flip);
            }
        }
        System.out.printf(
                "seed %d: %d flips, %d in the journal, %d of the others started and read%n",
                SEED, FLIPS, inJournal, started);
        assertTrue(inJournal > FLIPS / 3 && started > 0);
    }

    private byte[] flipped(byte[] whole, int at) {
        byte[] flipped = whole.clone();
        flipped[at] ^= (byte) (1 << random.nextInt(8));
        return flipped;
    }

    private void flipJournal(int flip) throws IOException {
        int at = random.nextInt(journal.length);
        Files.write(day.resolve("journal.jsonl"), flipped(journal, at));
        Damaged found = assertThrows(
                Damaged.class, () -> new Verify(Catalogue.projection()).check(day), "seed " + SEED + " flip " + flip);
        String first = "record " + lineOf(at) + ":";
        assertTrue(
                String.valueOf(found.getMessage()).startsWith(first),
                "flip " + flip + " is in " + first + " " + found.getMessage());
        Files.write(day.resolve("journal.jsonl"), journal);
        Files.write(day.resolve("skeinday.mv.db"), database);
    }

    /** The record that a byte of the journal belongs to, its line end with it. */
    private long lineOf(int at) {
        long n = 1;
        for (int i = 0; i < at; i++) {
            n += journal[i] == '\n' ? 1 : 0;
        }
        return n;
    }

    private void flipDatabase(int flip) throws IOException {
        Files.write(day.resolve("skeinday.mv.db"), flipped(database, random.nextInt(database.length)));
        try {
            assertEquals(
                    saved,
                    Exchange.write(day, new TakenOut.Choice(), Clock.systemDefaultZone())
                            .texts(),
                    "seed " + SEED + " flip " + flip);
        } catch (Damaged named) {
            assertTrue(String.valueOf(named.getMessage()).startsWith("record "), named.getMessage());
        }
        Files.write(day.resolve("skeinday.mv.db"), database);
    }
}
