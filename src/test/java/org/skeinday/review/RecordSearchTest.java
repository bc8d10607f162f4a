package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.review.RecordSearch.Item;

class RecordSearchTest {
    private static final List<Item> ITEMS = List.of(
            new Item(FoundKind.MOTOR, "m3", "A-03", "Lot 7, clockwise", 0),
            new Item(FoundKind.MOTOR, "m31", "A-31", "Lot 7", 0),
            new Item(FoundKind.MOTOR, "m30", "A-30", "Lot 70", 0),
            new Item(FoundKind.MODEL, "k1", "Kolibrí", "coaxial, two motors", 0),
            new Item(FoundKind.NOTE, "n1", "Kolibrí", "trim: tip weight, after the beam at 30 s", 5),
            new Item(FoundKind.NOTE, "n2", "Kolibrí", "repair: blade root glued", 9),
            new Item(FoundKind.PERSON, "p1", "Åsa Müller-Strauß", "winds, reads", 0));

    private static final RecordSearch SEARCH = new RecordSearch(ITEMS);

    private static List<String> found(String query) {
        return SEARCH.find(query).stream().map(Item::id).toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"A-03", "a3", "A03", "a 3", "A_003", "a‑3", " A-3 "})
    void a_tag_is_found_in_any_form_and_only_that_tag(String typed) {
        assertEquals(List.of("m3"), found(typed));
    }

    @Test
    void a_word_and_number_are_found_together_and_joined() {
        assertEquals(List.of("m3", "m31"), found("lot7"));
        assertEquals(List.of("n1"), found("30 beam"));
        assertEquals(List.of("at", "30", "at30"), SearchWords.searched("at 30"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"asa", "ÅSA", "müller", "muller", "strauss", "Strauß", "A\u030Asa", "mueler asa x"})
    void case_and_accents_do_not_matter(String typed) { // the last asks one word too many
        assertEquals(typed.endsWith("x") ? List.of() : List.of("p1"), found(typed));
    }

    @Test
    void each_word_must_fit_and_the_title_weighs_more_than_the_text_then_the_later_comes_first() {
        assertEquals(List.of("n2", "n1", "k1"), found("kolibri"));
        assertEquals(List.of("n2"), found("kolibri glued"));
        assertEquals(List.of(), found("kolibri propeller"));
        var both = new RecordSearch(List.of(
                new Item(FoundKind.NOTE, "text", "x", "beam", 9), new Item(FoundKind.NOTE, "title", "beam", "x", 1)));
        assertEquals(
                List.of("title", "text"),
                both.find("beam").stream().map(Item::id).toList());
    }

    @Test
    void beginnings_insides_and_one_slip_of_the_keys_are_found_in_that_order() {
        var search = new RecordSearch(List.of(
                new Item(FoundKind.NOTE, "slip", "weigth", "", 9),
                new Item(FoundKind.NOTE, "one off", "weighs", "", 8),
                new Item(FoundKind.NOTE, "inside", "counterweight", "", 7),
                new Item(FoundKind.NOTE, "beginning", "weights", "", 6),
                new Item(FoundKind.NOTE, "whole", "weight", "", 5)));
        assertEquals(
                List.of("whole", "beginning", "inside", "one off"),
                search.find("weight").stream().map(Item::id).toList());
        assertTrue(RecordSearch.isOneOff("glued", "glud"));
        assertTrue(RecordSearch.isOneOff("glued", "glueds"));
        assertTrue(RecordSearch.isOneOff("glued", "blued"));
        assertFalse(RecordSearch.isOneOff("glued", "bluet"));
        assertFalse(RecordSearch.isOneOff("glued", "gl"));
    }

    @Test
    void figures_are_never_one_off_and_nothing_typed_finds_nothing() {
        assertEquals(0, RecordSearch.fit("20261", "20262"));
        assertEquals(0, RecordSearch.fit("a3", "a31"));
        assertEquals(List.of(), found(" -- "));
        List<Item> many = new ArrayList<>();
        for (int i = 0; i < 80; i++) {
            many.add(new Item(FoundKind.NOTE, "n" + i, "trim", "", i));
        }
        List<Item> shown = new RecordSearch(many).find("trim");
        assertEquals(RecordSearch.MOST, shown.size());
        assertEquals("n79", shown.get(0).id());
    }
}
