package org.skeinday.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordTablesTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            loop_mm           | loop (mm)
            mass_g            | mass (g)
            peak_torque_nmm   | peak torque (N·mm)
            released_at_ms    | released at (ms since 1970 UTC)
            at_ms             | at (ms since 1970 UTC)
            duration_ms       | duration (ms)
            drift_mps         | drift (m/s)
            pull_test_n       | pull test (N)
            minimum_s         | minimum (s)
            celsius           | celsius (°C)
            tag               | tag
            """)
    void units_stand_in_the_headers(String column, String header) {
        assertEquals(header, RecordTables.header(column));
    }

    @Test
    void beside_a_person_stands_the_name_and_formulas_are_guarded() {
        Map<String, String> texts = RecordTables.write(
                Map.of(
                        "hall_air",
                        List.of(List.of("id", "person_id"), List.of("=x", "p1"), List.of("b", "p2"), List.of("c", ""))),
                Map.of("p1", "Ines"));
        assertEquals("id,person id,person name\n'=x,p1,Ines\nb,p2,someone\nc,,\n", texts.get("hall-air.csv"));
    }
}
