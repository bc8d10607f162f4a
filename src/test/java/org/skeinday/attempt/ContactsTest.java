package org.skeinday.attempt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ContactsTest {
    @ParameterizedTest
    @CsvSource({"0,none", "1,1 contact", "2,2 contacts", "9999,9999 contacts"})
    void a_number_is_said_and_read_again(int count, String words) {
        assertEquals(words, new Contacts(count).words());
        assertEquals(Optional.of(new Contacts(count)), Contacts.parse(words));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "twice the wall", "2", "2 contacts with the wall", "-1 contact", "12345 contacts"})
    void what_people_wrote_is_no_number(String text) {
        assertEquals(Optional.empty(), Contacts.parse(text));
    }

    @Test
    void a_number_below_0_or_beyond_what_is_counted_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new Contacts(-1));
        assertThrows(IllegalArgumentException.class, () -> new Contacts(10_000));
    }
}
