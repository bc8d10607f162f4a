package org.skeinday.platform.record;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One act as it stands in the journal: one line of JSON whose hash runs over the bytes before it, and names the hash
 * of the line before.
 *
 * @param n 1, 2, 3 …
 * @param atMs the server's time when it was decided, milliseconds since 1970
 * @param brought who brought it in a file; absent from lines of acts that a device sent itself
 * @param sum SHA-256 of kind and content: tells a repeat from another act under the same id
 */
record JournalLine(
        long n,
        long atMs,
        String act,
        String kind,
        String sum,
        String dev,
        String who,
        Act.@Nullable Brought brought,
        List<FactLine> facts,
        String prev,
        String hash) {
    /** The newest form of a line that this program writes and the newest it can read. */
    static final int VERSION = 1;

    /** A fact as read back: its kind, the version of its form, its body. */
    record FactLine(String kind, int v, JsonNode body) {}

    private static final String HASH_KEY = ",\"hash\":\"";
    private static final String PREV_KEY = ",\"prev\":\"";
    private static final int HASH_TAIL = HASH_KEY.length() + 64 + 2;

    static JournalLine made(long n, long atMs, Act act, String sum, List<Fact> facts, String prev) {
        List<FactLine> lines = new ArrayList<>();
        for (Fact fact : facts) {
            lines.add(new FactLine(fact.kind(), fact.v(), Json.MAPPER.valueToTree(fact.body())));
        }
        var open = new JournalLine(
                n,
                atMs,
                act.id(),
                act.kind(),
                sum,
                act.device(),
                act.person(),
                act.brought(),
                List.copyOf(lines),
                prev,
                "");
        return open.withHash(Sha.hex(open.body()));
    }

    private JournalLine withHash(String newHash) {
        return new JournalLine(n, atMs, act, kind, sum, dev, who, brought, facts, prev, newHash);
    }

    /** The line's text without its hash and closing brace. */
    private String body() {
        var json = Json.MAPPER.createObjectNode();
        json.put("n", n).put("v", VERSION).put("at", atMs).put("act", act).put("kind", kind);
        json.put("sum", sum).put("dev", dev).put("who", who);
        if (brought != null) {
            json.putObject("brought").put("dev", brought.device()).put("who", brought.person());
        }
        var array = json.putArray("facts");
        for (FactLine fact : facts) {
            array.addObject().put("kind", fact.kind()).put("v", fact.v()).set("body", fact.body());
        }
        json.put("prev", prev);
        String text = json.toString();
        return text.substring(0, text.length() - 1);
    }

    /** With the hash, without a line end. */
    String text() {
        return body() + HASH_KEY + hash + "\"}";
    }

    /**
     * Reads a line and checks it against the one before.
     *
     * @throws Damaged naming the record and what is wrong with it
     */
    static JournalLine read(byte[] line, long expectedN, String expectedPrev) {
        String hash = fittingHash(line, expectedN);
        return checked(parse(line, expectedN, hash), expectedN, expectedPrev);
    }

    /**
     * Checks a line as {@link #read} does, mostly without reading what it says: its bytes are what was hashed, so its two
     * ends, written as {@link #body} writes them, tell its number, its form and the line before.
     *
     * @return its hash
     * @throws Damaged naming the record and what is wrong with it
     */
    static String check(byte[] line, long expectedN, String expectedPrev) {
        String hash = fittingHash(line, expectedN);
        byte[] start = ("{\"n\":" + expectedN + ",\"v\":" + VERSION + ",").getBytes(StandardCharsets.US_ASCII);
        byte[] end = (PREV_KEY + expectedPrev + '"').getBytes(StandardCharsets.US_ASCII);
        int bodyLength = line.length - HASH_TAIL;
        boolean asWritten = bodyLength >= start.length + end.length
                && Arrays.mismatch(line, 0, start.length, start, 0, start.length) < 0
                && Arrays.mismatch(line, bodyLength - end.length, bodyLength, end, 0, end.length) < 0;
        return asWritten
                ? hash
                : checked(parse(line, expectedN, hash), expectedN, expectedPrev).hash();
    }

    private static String fittingHash(byte[] line, long expectedN) {
        int cut = line.length - HASH_TAIL;
        String tail = cut < 0 ? "" : new String(line, cut, HASH_TAIL, StandardCharsets.ISO_8859_1);
        if (!tail.startsWith(HASH_KEY) || !tail.endsWith("\"}")) {
            throw new Damaged("record " + expectedN + ": the line has no hash at its end");
        }
        String hash = tail.substring(HASH_KEY.length(), HASH_TAIL - 2);
        if (!Sha.hex(line, cut).equals(hash)) {
            throw new Damaged("record " + expectedN + ": its content does not fit its hash");
        }
        return hash;
    }

    private static JournalLine checked(JournalLine line, long expectedN, String expectedPrev) {
        if (line.n() != expectedN) {
            throw new Damaged("record " + expectedN + ": the line calls itself record " + line.n());
        }
        if (!line.prev().equals(expectedPrev)) {
            throw new Damaged("record " + expectedN + ": it does not follow the record before it");
        }
        return line;
    }

    private static Act.@Nullable Brought broughtBy(JsonNode json) {
        return json.isObject()
                ? new Act.Brought(json.path("dev").asText(), json.path("who").asText())
                : null;
    }

    private static JournalLine parse(byte[] line, long n, String hash) {
        try {
            JsonNode json = Json.MAPPER.readTree(line);
            if (json.path("v").asInt() > VERSION) {
                throw new Damaged(String.valueOf(
                        new Projection.Newer(n, "its form " + json.path("v").asInt() + " is not known here")
                                .getMessage()));
            }
            List<FactLine> facts = new ArrayList<>();
            for (JsonNode fact : json.path("facts")) {
                facts.add(
                        new FactLine(fact.path("kind").asText(), fact.path("v").asInt(), fact.path("body")));
            }
            return new JournalLine(
                    json.path("n").asLong(),
                    json.path("at").asLong(),
                    json.path("act").asText(),
                    json.path("kind").asText(),
                    json.path("sum").asText(),
                    json.path("dev").asText(),
                    json.path("who").asText(),
                    broughtBy(json.path("brought")),
                    List.copyOf(facts),
                    json.path("prev").asText(),
                    hash);
        } catch (IOException e) { // no more than that it is no JSON: its bytes are at hand
            throw new Damaged("record " + n + ": it is not JSON");
        }
    }
}
