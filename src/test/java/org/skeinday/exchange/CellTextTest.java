package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CellTextTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "", "a", "'", "''", "'''", "'t Riet", "=1+1", "'=1+1", "''=1+1", "+1", "-1", "@x", "'@x", "\tx", "' x",
                " x", "=", "'-", "x=1", "a\nb", "=a\n=b"
            })
    void what_is_guarded_is_read_back_just_as_it_was(String text) {
        assertEquals(text, CellText.unguarded(CellText.guarded(text)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@x", "\tx"})
    void what_a_spreadsheet_would_run_begins_with_an_apostrophe(String text) {
        assertEquals("'" + text, CellText.guarded(text));
    }

    @Test
    void a_name_that_begins_with_an_apostrophe_is_left_as_it_is() {
        assertEquals("'t Riet", CellText.guarded("'t Riet"));
        assertEquals("'t Riet", CellText.unguarded("'t Riet"));
    }

    @Test
    void space_around_an_unguarded_cell_and_the_kind_of_line_end_are_no_part_of_it() {
        assertEquals("a\nb\nc", CellText.unguarded(" a\r\nb\rc \t"));
    }
}
