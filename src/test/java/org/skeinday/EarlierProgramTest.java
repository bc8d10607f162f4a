package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.skeinday.platform.record.ActStore;

/**
 * Journals that a program wrote before its classes and their words were renamed mean what they meant. Each stands beside
 * the tables that the program of then had made of it; together they hold 87 kinds of facts.
 */
class EarlierProgramTest {

    /** Tables that are made of facts of before, and were not there then. */
    private static final Set<String> MADE_SINCE = Set.of("attempt_planned", "audit_row");
    /** Since then those of the watches that count: a watch that was taken out moves them. */
    private static final Set<String> OF_WATCHES_THAT_COUNT = Set.of("released_at_ms", "landed_at_ms");

    @TempDir
    Path root;

    static Stream<String> days() {
        return EarlierJournals.days();
    }

    @ParameterizedTest
    @MethodSource("days")
    void a_journal_gives_the_tables_that_it_gave(String day) throws IOException {
        Map<String, List<String>> were = TableText.read(EarlierJournals.text(day, "tables.txt"));
        try (ActStore record = ActStore.open(folder(day), Catalogue.projection(), Clock.systemUTC())) {
            for (Map.Entry<String, List<String>> table : were.entrySet()) {
                String columns = table.getValue().get(0);
                List<String> lines = record.read(tx -> TableText.lines(tx, table.getKey(), columns));
                Set<String> other = table.getKey().equals("attempt") && were.containsKey("attempt_watch_judged")
                        ? OF_WATCHES_THAT_COUNT
                        : Set.of();
                assertEquals(without(other, table.getValue()), without(other, lines), table.getKey());
            }
            List<String> filled = new ArrayList<>(record.read(TableText::filled));
            filled.removeAll(MADE_SINCE);
            assertEquals(List.copyOf(were.keySet()), filled);
        }
    }

    private static String without(Set<String> columns, List<String> lines) {
        List<String> names = List.of(lines.get(0).split("\\|", -1));
        return lines.stream()
                .map(line -> {
                    List<String> cells = List.of(line.split("\\|", -1));
                    return IntStream.range(0, cells.size())
                            .filter(i -> i >= names.size() || !columns.contains(names.get(i)))
                            .mapToObj(cells::get)
                            .collect(Collectors.joining("|"));
                })
                .collect(Collectors.joining("\n"));
    }

    private Path folder(String day) throws IOException {
        return EarlierJournals.into(root.resolve("day"), day);
    }

    @Test
    void nearly_every_kind_of_fact_is_among_them() {
        var kinds = new TreeSet<String>();
        days().forEach(day -> kinds.addAll(EarlierJournals.kinds(day)));
        assertEquals(87, kinds.size(), kinds.toString());
    }
}
