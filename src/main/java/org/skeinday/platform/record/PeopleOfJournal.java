package org.skeinday.platform.record;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Whose names a journal needs, found while its lines are read. */
final class PeopleOfJournal implements JournalReader.Lines {
    private static final String JOINED_CREW = "crew.added";
    private static final String PERSON = "personId";
    /** Who answered for what was open may be of no crew. */
    private static final String ADULT = "adultId";

    private static final List<byte[]> KEYS = List.of(key(PERSON), key(ADULT));

    private final Set<String> named = new HashSet<>();
    private final Set<String> crew = new TreeSet<>();
    private final Set<String> erased = new HashSet<>();

    /** Lines that name somebody have the name's key in them just so: it is written with no character that is escaped. */
    @Override
    public boolean wants(long n, byte[] line) {
        return KEYS.stream().anyMatch(key -> isIn(line, key));
    }

    private static boolean isIn(byte[] line, byte[] key) {
        int last = line.length - key.length;
        for (int i = 0; i <= last; i++) {
            if (line[i] == key[0] && Arrays.equals(line, i, i + key.length, key, 0, key.length)) {
                return true;
            }
        }
        return false;
    }

    private static byte[] key(String name) {
        return ('"' + name + '"').getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public void passed(long n, String hash) {}

    @Override
    public void line(JournalLine line) {
        for (JournalLine.FactLine fact : line.facts()) {
            String person = fact.body().path(PERSON).asText("");
            named.add(person);
            named.add(fact.body().path(ADULT).asText(""));
            if (fact.kind().equals(JOINED_CREW)) {
                crew.add(person);
            }
            if (fact.kind().equals(Erasing.KIND)) {
                erased.add(person);
            }
        }
    }

    @Override
    public void end(long n) {}

    Set<String> erased() {
        return erased;
    }

    /** Of the crew, not erased, and without a name there. */
    Set<String> missingIn(Map<String, String> names) {
        Set<String> missing = new TreeSet<>(crew);
        missing.removeAll(erased);
        missing.removeAll(names.keySet());
        return missing;
    }

    /** Names of no person of the journal: a kill between the name and its line leaves one. */
    Set<String> needlessIn(Map<String, String> names) {
        Set<String> needless = new HashSet<>(names.keySet());
        needless.removeIf(person -> named.contains(person) && !erased.contains(person));
        return needless;
    }
}
