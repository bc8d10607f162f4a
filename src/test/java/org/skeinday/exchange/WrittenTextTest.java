package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.contest.CrewAdded;

class WrittenTextTest {
    @Test
    void what_was_typed_is_written_as_long_as_it_still_means_the_number() {
        assertEquals("9.5 in", Quantity.Kind.LENGTH.text(9.5 * 25.4, "9.5 in"));
        assertEquals("241 mm", Quantity.Kind.LENGTH.text(241.0, "9.5 in"));
        assertEquals("241 mm", Quantity.Kind.LENGTH.text(241.0, null));
        assertEquals("241 mm", Quantity.Kind.LENGTH.text(241.0, "nine and a half"));
        assertEquals("", Quantity.Kind.LENGTH.text(null, null));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 1.0 / 3, 0.30000000000000004, 1e-7, 123456.789, 100, 1e7})
    void a_number_is_written_without_exponent_and_read_as_the_same(double number) {
        String text = Numbers.text(number);
        assertEquals(number, Double.parseDouble(text));
        assertEquals(-1, text.indexOf('E'));
    }

    @Test
    void rows_are_ordered_by_their_key_and_then_by_their_cells() {
        var table = new Table(List.of(Column.plain("a"), Column.plain("b")));
        table.line("2").put("a", "y");
        table.line(Table.order(10)).put("a", "ten");
        table.line(Table.order(9)).put("a", "nine");
        table.line("2").put("a", "x").put("b", "1");
        assertEquals("a,b\nnine,\nten,\nx,1\ny,\n", CsvLines.write(table.rows()));
    }

    @Test
    void two_people_of_one_name_and_those_who_were_erased_can_be_told_apart() {
        var day = new Day(
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(new CrewAdded("p4", "", "reads", null, null), new CrewAdded("p5", "", "", null, null)),
                List.of(),
                List.of(),
                Map.of(),
                List.of(),
                List.of(),
                Map.of("p1", "Ida", "p2", "Ida", "p3", "Ida (2)"),
                Day.More.NONE);
        String crew = DayFiles.write(day, Reading.ZONE).texts().get("crew.csv");
        assertEquals(
                "name,event,tasks,clean winds,team\nIda,,,,\nIda (2),,,,\nIda (3),,,,\nsomeone,,reads,,\nsomeone (2),,,,\n",
                crew);
        DayFiles.Read read = Reading.of(Map.of("crew.csv", crew));
        Reading.right(read);
        assertEquals(5, read.names().size());
    }

    @Test
    void cells_with_separators_quotes_or_line_ends_are_quoted() {
        assertEquals(
                "\"a,b\",\"c;d\",\"e\tf\",\"g\"\"h\",\"i\nj\",k l\n",
                CsvLines.write(List.of(List.of("a,b", "c;d", "e\tf", "g\"h", "i\nj", "k l"))));
    }
}
