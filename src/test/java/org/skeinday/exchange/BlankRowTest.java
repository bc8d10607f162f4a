package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.skeinday.TestIds;
import org.skeinday.contest.EventAdded;
import org.skeinday.contest.ModelAdded;
import org.skeinday.contest.StationAdded;
import org.skeinday.contest.Terms;

/** What a form shows first is what an empty cell means: told twice, it must not differ. */
class BlankRowTest {
    private static final ZoneId ZONE = ZoneId.of("UTC");

    private static List<Object> read(String file, Map<String, String> cells, Day there) {
        DayFiles.Read read = DayRows.read(file, cells, there, TestIds.from("id-"), ZONE);
        assertEquals(List.of(), read.errors());
        return read.facts().stream().map(DayFiles.Named::body).toList();
    }

    @ParameterizedTest
    @CsvSource({
        "event.csv, name=New | day=2026-05-09",
        "models.csv, model=New | team=Reed | hook distance=9 in",
        "stations.csv, station=New",
        "rules.csv, event=Day",
        "terms.csv, event=Day"
    })
    void empty_cells_mean_what_their_columns_say(String file, String needed) {
        Map<String, String> blank = new HashMap<>();
        for (String cell : needed.split("\\s*\\|\\s*")) {
            blank.put(cell.replaceFirst("=.*", ""), cell.replaceFirst(".*=", ""));
        }
        Map<String, String> filled = new HashMap<>(blank);
        DayRows.columns(file).stream()
                .filter(column -> !column.otherwise().isEmpty())
                .forEach(column -> filled.put(column.name(), column.otherwise()));
        assertFalse(filled.equals(blank), "the columns say something");
        Day there = new DayWith(file).day();
        assertEquals(unlessNull(read(file, filled, there)), unlessNull(read(file, blank, there)));
    }

    /** A model that says nothing has one motor, which older records leave out. */
    private static Object unlessNull(List<Object> facts) {
        return facts.stream()
                .map(fact -> fact instanceof ModelAdded m
                        ? List.of(m.name(), m.direction(), m.motors() == null ? 1 : m.motors())
                        : fact)
                .toList();
    }

    /** A day with what the row must name. */
    private record DayWith(String file) {
        Day day() {
            if (!file.equals("terms.csv") && !file.equals("rules.csv")) {
                return Day.EMPTY;
            }
            var event = (EventAdded) read("event.csv", Map.of("name", "Day", "day", "2026-05-09"), Day.EMPTY)
                    .get(0);
            return new Day(
                    List.of(event),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    Map.of(),
                    List.of(),
                    List.of(),
                    Map.of(),
                    Day.More.NONE);
        }
    }

    @ParameterizedTest
    @CsvSource({"free, false", "none, true"})
    void terms_ask_for_quiet_only_when_no_help_is_allowed(String help, boolean quiet) {
        var terms =
                (Terms) read("terms.csv", Map.of("event", "Day", "outside help", help), new DayWith("terms.csv").day())
                        .get(0);
        assertEquals(quiet, terms.asksForQuiet());
    }

    @ParameterizedTest
    @CsvSource({"table", "post", "held"})
    void a_station_keeps_its_mount(String mount) {
        var station = (StationAdded) read("stations.csv", Map.of("station", "New", "mount", mount), Day.EMPTY)
                .get(0);
        assertEquals(mount, station.mount());
    }
}
