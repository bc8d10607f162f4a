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
