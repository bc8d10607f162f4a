package org.skeinday.review.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.skeinday.platform.http.Refusal;
import org.skeinday.review.FlightGroup;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Grouping;
import org.skeinday.review.Named;
import org.skeinday.review.Season;
import org.skeinday.units.Sentence;

/** What can be looked at: an event, a day, a season, a model, batch or motor. */
final class Looks {
    /** A chosen one. @param of which thing, flights in the order in which they were flown */
    record Chosen(Grouping by, FlightGroup group) {
        String value() {
            return value(by, group);
        }

        private static String value(Grouping by, FlightGroup group) {
            Named of = group.of();
            return by.word() + ":" + (of == null ? "" : of.id());
        }
    }

    private static final List<Grouping> ORDER =
            List.of(Grouping.EVENT, Grouping.SEASON, Grouping.DAY, Grouping.MODEL, Grouping.BATCH, Grouping.MOTOR);

    private final List<FlightRow> rows;

    Looks(List<FlightRow> rows) {
        this.rows = rows;
    }

    /** The last event or day by default. @param typed for example {@code model:} and its id */
    Chosen choose(String typed) {
        if (typed.isEmpty()) {
            FlightRow last = rows.get(rows.size() - 1);
            Grouping by = last.flown().event() == null ? Grouping.DAY : Grouping.EVENT;
            return groups(by).stream()
                    .filter(g -> g.flights().contains(last))
                    .findFirst()
                    .map(g -> new Chosen(by, g))
                    .orElseThrow();
        }
        return ORDER.stream()
                .filter(by -> typed.startsWith(by.word() + ":"))
                .findFirst()
                .flatMap(by -> find(by, typed))
                .orElseThrow(() -> Refusal.notFound("No flight of that is in the record."));
    }

    private Optional<Chosen> find(Grouping by, String typed) {
        return groups(by).stream()
                .map(g -> new Chosen(by, g))
                .filter(c -> c.value().equals(typed))
                .findFirst();
    }

    /** Those that are known. */
    private List<FlightGroup> groups(Grouping by) {
        return by.of(rows, Season.DEFAULT_START).stream()
                .filter(g -> g.of() != null)
                .toList();
    }

    /** Of days and events the last first, of things by name. */
    List<EveningView.Group> options(Chosen chosen) {
        List<EveningView.Group> all = new ArrayList<>();
        for (Grouping by : ORDER) {
            List<FlightGroup> groups = new ArrayList<>(groups(by));
            if (by == Grouping.EVENT || by == Grouping.SEASON || by == Grouping.DAY) {
                java.util.Collections.reverse(groups);
            } else {
                groups.sort(Comparator.comparing(FlightGroup::name));
            }
            all.add(new EveningView.Group(
                    Sentence.begin(by.word()),
                    groups.stream().map(g -> option(by, g, chosen)).toList()));
        }
        return all;
    }

    private static EveningView.Option option(Grouping by, FlightGroup group, Chosen chosen) {
        String value = Chosen.value(by, group);
        String flights =
                group.flights().size() == 1 ? "1 flight" : group.flights().size() + " flights";
        return new EveningView.Option(value, title(by, group) + ", " + flights, value.equals(chosen.value()));
    }

    static String title(Grouping by, FlightGroup group) {
        return by == Grouping.EVENT || by == Grouping.DAY
                ? group.name()
                : Sentence.begin(by.word()) + " " + group.name();
    }
}
