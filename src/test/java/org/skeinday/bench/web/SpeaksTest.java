package org.skeinday.bench.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpeaksTest {
    @ParameterizedTest
    @CsvSource({
        "Ayla, Tomek, Only Ayla speaks to Tomek.",
        "'', Tomek, Only the reader speaks to Tomek.",
        "Ayla, '', Only Ayla speaks to the winder.",
        "'', '', Only the reader speaks to the winder.",
        "Tomek, Tomek, 'Nobody speaks to Tomek, who reads alone.'"
    })
    void the_names_are_those_of_the_assignment_and_everybody_may_say_stop(String reader, String winder, String only) {
        assertEquals(only + " Anyone may say stop.", new Speaks(reader, winder).words());
    }
}
