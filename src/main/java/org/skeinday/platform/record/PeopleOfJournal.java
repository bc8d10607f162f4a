package org.skeinday.platform.record;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Whose names a journal needs, found while its lines are read. */
final class PeopleOfJournal {
    private static final String JOINED_CREW = "crew.added";
    private static final String PERSON = "personId";

    private final Set<String> named = new HashSet<>();
    private final Set<String> crew = new TreeSet<>();
    private final Set<String> erased = new HashSet<>();

    void line(JournalLine line) {
        for (JournalLine.FactLine fact : line.facts()) {
            String person = fact.body().path(PERSON).asText("");
            named.add(person);
            if (fact.kind().equals(JOINED_CREW)) {
                crew.add(person);
            }
            if (fact.kind().equals(Erasing.KIND)) {
                erased.add(person);
            }
        }
    }

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
