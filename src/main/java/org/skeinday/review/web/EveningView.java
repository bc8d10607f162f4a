package org.skeinday.review.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The evening in finished words.
 *
 * @param any whether there is any flight in the record
 * @param looks what can be looked at, in groups
 * @param about the finding whose flights alone are in the table, empty for all
 * @param all the address of this without it
 * @param open questions without evidence yet
 * @param lacking what would make more of them answerable, empty when nothing does
 * @param waiting flights, winds and breaks that wait for a word
 * @param left cards and figures that are still to be keyed in
 */
public record EveningView(
        boolean any,
        String title,
        List<Group> looks,
        List<Filter> filters,
        List<Said> findings,
        List<String> open,
        String lacking,
        String about,
        String all,
        OpenQuestionsView waiting,
        Flights flights,
        Pictures pictures,
        @Nullable ChangeView change,
        List<Link> left) {
    /** The same, with what the last word did or why it was not taken. */
    EveningView said(String said, String problem) {
        OpenQuestionsView told = waiting.said(said, problem);
        return new EveningView(
                any, title, looks, filters, findings, open, lacking, about, all, told, flights, pictures, change, left);
    }

    /** Options under one word. */
    public record Group(String label, List<Option> options) {}

    public record Option(String value, String words, boolean chosen) {}

    /** A choice among those that are there; the first option asks nothing. */
    public record Filter(String name, String label, List<Option> options) {
        boolean asks() {
            return options.stream().anyMatch(o -> o.chosen() && !o.value().isEmpty());
        }
    }

    /** A finding. @param address of its flights */
    public record Said(String sentence, String strength, String flights, String address) {}

    public record Link(String words, String address) {}

    /** @param newer and {@code older}: addresses of the pages beside this, empty for none */
    public record Flights(List<String> head, List<Row> rows, String count, String newer, String older) {}

    public record Row(String id, String label, String address, List<String> cells, boolean spoilt) {}

    /** @param address where they are when they are too many to stand here, else empty */
    public record Pictures(List<ChartView> drawn, List<String> empty, String address) {}

    /** Whether less than all is looked at. */
    public boolean filtered() {
        return filters.stream().anyMatch(Filter::asks);
    }
}
