package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.skeinday.platform.db.DatabaseTrouble;

class ApartTest {
    @Test
    void what_can_be_made_stands_as_it_is_and_what_cannot_is_said_in_its_place() {
        assertEquals("drawn", Apart.made("The picture", () -> "drawn", words -> words));
        assertEquals(
                "The picture cannot be shown just now. All else here holds; the log has the reason.",
                Apart.made("The picture", () -> Optional.<String>empty().orElseThrow(), words -> words));
    }

    private static String deeper(int n) {
        return n < 0 ? "" : deeper(n + 1) + n; // deeper than any stack, though not for ever
    }

    @Test
    void a_fault_of_the_program_that_is_an_error_takes_down_no_page_either() {
        String words = "The picture cannot be shown just now. All else here holds; the log has the reason.";
        assertEquals(words, Apart.<String>made("The picture", () -> deeper(0), said -> said));
        assertEquals(
                words,
                Apart.<String>made(
                        "The picture",
                        () -> {
                            throw new AssertionError("never so");
                        },
                        said -> said));
        assertThrows(
                OutOfMemoryError.class,
                () -> Apart.<String>made(
                        "It",
                        () -> {
                            throw new OutOfMemoryError("as when there is none left");
                        },
                        said -> said));
    }

    @Test
    void a_refusal_and_a_database_that_is_being_opened_again_are_for_the_whole_page() {
        assertThrows(
                Refusal.class,
                () -> Apart.<String>made(
                        "It",
                        () -> {
                            throw Refusal.notFound("There is none.");
                        },
                        words -> words));
        assertThrows(
                DatabaseTrouble.class,
                () -> Apart.<String>made(
                        "It",
                        () -> {
                            throw new DatabaseTrouble("closed");
                        },
                        words -> words));
    }
}
