package org.skeinday.prepare.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A long list is shown fifty rows at a time, with plain links to the others. */
class PartOfRowsTest {
    private static List<Integer> rows(int count) {
        return IntStream.range(0, count).boxed().toList();
    }

    @Test
    void fifty_rows_stand_on_one_page_and_need_no_links() {
        var first = new PartOfRows(0);
        assertEquals(50, first.of(rows(50)).size());
        assertEquals(List.of(), first.links("/prepare/flights", 50));
    }

    @Test
    void the_fifty_first_row_stands_on_a_second_page() {
        var second = new PartOfRows(1);
        assertEquals(List.of(50), second.of(rows(51)));
        assertEquals(
                List.of(new RowsView.PageLink("/prepare/flights", "1 to 50"), new RowsView.PageLink("", "51 to 51")),
                second.links("/prepare/flights", 51));
    }

    @Test
    void behind_the_last_page_there_is_nothing_and_the_links_lead_back() {
        var behind = new PartOfRows(9);
        assertEquals(List.of(), behind.of(rows(120)));
        assertEquals(
                List.of("/prepare/motors", "/prepare/motors?page=1", "/prepare/motors?page=2"),
                behind.links("/prepare/motors", 120).stream()
                        .map(RowsView.PageLink::address)
                        .toList());
    }

    @Test
    void each_row_stands_on_exactly_one_page() {
        List<Integer> shown = IntStream.range(0, 40)
                .mapToObj(page -> new PartOfRows(page).of(rows(2_000)))
                .flatMap(List::stream)
                .toList();
        assertEquals(rows(2_000), shown);
    }
}
