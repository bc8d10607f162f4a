package org.skeinday.review.web;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.bench.web.BreakQuestions;
import org.skeinday.bench.web.WindQuestions;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.http.Apart;
import org.skeinday.review.BatchOfWinds;
import org.skeinday.review.EveningReview;
import org.skeinday.review.Figure;
import org.skeinday.review.Finding;
import org.skeinday.review.FlightContext;
import org.skeinday.review.FlightGroup;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Grouping;
import org.skeinday.review.Named;
import org.skeinday.review.TorqueAtShare;
import org.skeinday.review.store.BatchWindsStore;
import org.skeinday.review.store.FlightRowStore;
import org.skeinday.units.UnitSystem;

/** Makes the evening from what somebody looks at. */
final class EveningPresenter {
    private final Tx tx;
    private final ZoneId zone;
    private final UnitSystem units;
    private final EveningQuery query;
    private final List<FlightRow> rows;
    private final long nowMs;
    private final boolean coach;

    /** @param coach whether the coach looks */
    EveningPresenter(
            Tx tx,
            ZoneId zone,
            Map<String, String> people,
            UnitSystem units,
            EveningQuery query,
            long nowMs,
            boolean coach) {
        this.coach = coach;
        this.nowMs = nowMs;
        this.tx = tx;
        this.zone = zone;
        this.units = units;
        this.query = query;
        this.rows = FlightRowStore.all(tx, zone, people);
    }

    /** What is said of some flights. */
    private record Reviewed(
            List<FlightRow> flights, List<BatchOfWinds> batches, List<Finding> findings, String missing) {}

    EveningView view() {
        if (rows.isEmpty()) {
            return nothing();
        }
        var looks = new Looks(rows);
        Looks.Chosen chosen = looks.choose(query.get(EveningQuery.LOOK));
        Reviewed said = reviewed(chosen);
        List<FlightRow> shown = about(said);
        return new EveningView(
                true,
                Looks.title(chosen.by(), chosen.group()),
                looks.options(chosen),
                filters(chosen.group()),
                said.findings.stream()
                        .filter(Finding::isEvidence)
                        .map(this::said)
                        .toList(),
                said.findings.stream()
                        .filter(f -> !f.isEvidence())
                        .map(Finding::sentence)
                        .toList(),
                lacking(said),
                aboutWords(said),
                query.with(EveningQuery.ABOUT, "").address("/evening"),
                waiting(),
                new FlightTable(zone, units).of(shown, query, leftOut(chosen.by())),
                said.flights.size() > PicturesPresenter.MOST_BESIDE
                        ? new EveningView.Pictures(List.of(), List.of(), query.address("/evening/pictures"))
                        : new PicturesPresenter(said.flights, said.findings, said.batches, units).view(),
                event(chosen).map(e -> ChangePresenter.view(tx, e)).orElse(null),
                event(chosen)
                        .map(e -> new CardsLeft(tx, e, chosen.group().flights(), zone, nowMs).links())
                        .orElse(List.of()));
    }

    /** Of all that is on record, whatever is looked at. */
    private OpenQuestionsView waiting() {
        Set<String> flights = rows.stream().map(FlightRow::id).collect(Collectors.toSet());
        var questions = new OpenQuestions(zone, units);
        return Apart.made(
                "What waits for a word",
                () -> questions.of(
                        rows, new WindQuestions(tx, zone).open(flights), BreakQuestions.open(tx), coach, query),
                words -> OpenQuestionsView.NONE.said("", words));
    }

    /** Nothing to look at yet. */
    private EveningView nothing() {
        var none = new EveningView.Flights(List.of(), List.of(), "", "", "");
        return new EveningView(
                false,
                "Evening",
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                "",
                "",
                "",
                waiting(),
                none,
                new EveningView.Pictures(List.of(), List.of(), ""),
                null,
                List.of());
    }

    /** However many there are. */
    EveningView.Pictures pictures() {
        if (rows.isEmpty()) {
            return new EveningView.Pictures(List.of(), List.of(), "");
        }
        Reviewed said = reviewed(new Looks(rows).choose(query.get(EveningQuery.LOOK)));
        return new PicturesPresenter(said.flights, said.findings, said.batches, units).view();
    }

    private Reviewed reviewed(Looks.Chosen chosen) {
        List<FlightRow> flights = query.filter().of(chosen.group().flights());
        var store = new BatchWindsStore(tx);
        List<BatchOfWinds> batches = flights.stream()
                .map(r -> r.flown().batch())
                .filter(Objects::nonNull)
                .distinct()
                .sorted(Comparator.comparing(Named::name))
                .flatMap(b -> store.of(b.id()).stream())
                .toList();
        LocalDate day = chosen.group()
                .flights()
                .get(chosen.group().flights().size() - 1)
                .day();
        var review = new EveningReview(
                flights,
                batches.stream()
                        .flatMap(b -> b.shares(TorqueAtShare.DEFAULT_SHARE, zone).stream())
                        .toList(),
                batches.stream().flatMap(b -> b.holds().stream()).toList(),
                day);
        return Apart.made(
                "What the flights show",
                () -> new Reviewed(flights, batches, review.findings(units), ""),
                words -> new Reviewed(flights, batches, List.of(), words + " "));
    }

    private static java.util.Optional<Named> event(Looks.Chosen chosen) {
        return chosen.by() == Grouping.EVENT
                ? java.util.Optional.ofNullable(chosen.group().of())
                : java.util.Optional.empty();
    }

    private static Set<Figure> leftOut(Grouping by) {
        return switch (by) {
            case EVENT -> EnumSet.of(Figure.EVENT);
            case MODEL -> EnumSet.of(Figure.MODEL);
            case BATCH -> EnumSet.of(Figure.BATCH);
            case MOTOR -> EnumSet.of(Figure.MOTOR, Figure.BATCH);
            case DAY, SEASON -> EnumSet.noneOf(Figure.class);
        };
    }

    private static String key(Finding finding) {
        return finding.kind().name() + " " + finding.about();
    }

    private EveningView.Said said(Finding finding) {
        int flights = finding.flights().size();
        return new EveningView.Said(
                finding.sentence(),
                finding.strength() == Finding.Strength.CLEAR ? "clear" : "likely",
                flights == 1 ? "Its flight" : "Its " + flights + " flights",
                query.with(EveningQuery.ABOUT, key(finding)).address("/evening") + "#flights");
    }

    private java.util.Optional<Finding> asked(Reviewed said) {
        String about = query.get(EveningQuery.ABOUT);
        return said.findings.stream().filter(f -> key(f).equals(about)).findFirst();
    }

    private List<FlightRow> about(Reviewed said) {
        return asked(said)
                .map(f -> said.flights.stream()
                        .filter(r -> f.flights().contains(r.id()))
                        .toList())
                .orElse(said.flights);
    }

    private String aboutWords(Reviewed said) {
        return asked(said).map(Finding::sentence).orElse("");
    }

    /** Without turns and times there is nothing to find. */
    private static String lacking(Reviewed said) {
        long bare = said.flights.stream()
                .filter(r -> r.flight().figures().isEmpty())
                .count();
        return bare == 0
                ? ""
                : bare + " of " + said.flights.size() + (bare == 1 ? " flights lacks" : " flights lack")
                        + " turns wound, turns remaining or a time: with them more could be said.";
    }

    private List<EveningView.Filter> filters(FlightGroup group) {
        List<FlightRow> flights = group.flights();
        return List.of(
                filter("model", "Model", flights, FlightContext::model),
                filter("batch", "Batch", flights, FlightContext::batch),
                filter("motor", "Motor", flights, FlightContext::motor),
                filter("winder", "Wound by", flights, FlightContext::winder),
                new EveningView.Filter(
                        "valid",
                        "For analysis",
                        List.of(
                                option("", "all", "valid"),
                                option("yes", "valid ones", "valid"),
                                option("no", "those that are not", "valid"))));
    }

    private EveningView.Filter filter(
            String name, String label, List<FlightRow> flights, Function<FlightContext, @Nullable Named> of) {
        List<EveningView.Option> there = flights.stream()
                .flatMap(r -> Stream.ofNullable(of.apply(r.flown())))
                .distinct()
                .sorted(Comparator.comparing(Named::name))
                .map(n -> option(n.id(), n.name(), name))
                .toList();
        List<EveningView.Option> options = new ArrayList<>(List.of(option("", "all", name)));
        options.addAll(there);
        return new EveningView.Filter(name, label, options);
    }

    private EveningView.Option option(String value, String words, String of) {
        return new EveningView.Option(value, words, query.get(of).equals(value));
    }
}
