package org.skeinday.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OpeningTest {
    private static final String PAGE = "http://localhost:8080/";

    @ParameterizedTest
    @CsvSource({"Linux, xdg-open", "Mac OS X, open", "Windows 11, rundll32"})
    void each_system_has_its_own_way_to_show_a_page(String system, String program) {
        List<String> command = Opening.command(PAGE, system);
        assertEquals(program, command.get(0));
        assertEquals(PAGE, command.get(command.size() - 1), "one argument of its own, never a shell's");
    }

    @Test
    void a_machine_without_a_desktop_goes_on() {
        assertFalse(Opening.of(PAGE, "windows that this machine is not"));
    }
}
