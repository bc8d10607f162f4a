package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CsvLinesTest {
    @Test
    void an_open_quote_is_named_by_the_line_on_which_its_cell_began() {
        List<CellError> errors = new ArrayList<>();

        List<CsvLines.Line> lines = CsvLines.read("crew.csv", "name\nAda\n\n\nBo,\"reads\nCy\nDi\n", errors);

        assertEquals(List.of(), lines);
        assertEquals(1, errors.size());
        assertEquals(5, errors.get(0).line(), "line 3 would be the guess without the library's own words");
    }
}
