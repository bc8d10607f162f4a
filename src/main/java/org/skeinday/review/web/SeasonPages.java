package org.skeinday.review.web;

import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.platform.record.Answer;
import org.skeinday.review.NewSeason;
import org.skeinday.review.Season;
import org.skeinday.review.action.BeginSeason;

/** A new season: what would change in words, then all of it in one act. */
public final class SeasonPages {
    private final ActStore record;
    private final FormActs forms;
    private final Page page;
    private final Clock clock;

    public SeasonPages(ActStore record, FormActs forms, Page page, Clock clock) {
        this.record = record;
        this.forms = forms;
        this.page = page;
        this.clock = clock;
    }

    public void register(Routes routes) {
        routes.get("/evening/season", Role.CAPTAIN, this::show);
        routes.post("/evening/season", Role.CAPTAIN, this::begin);
    }

    private void show(Context ctx) {
        String first = ctx.queryParam("first");
        if (first == null) {
            page.show(ctx, "New season", "review/season.jte", view(next(), months(null), List.of(), false));
            return;
        }
        String months = months(ctx.queryParam("months"));
        FormErrors wrong = wrong(first, months);
        if (!wrong.isEmpty()) {
            ctx.status(422);
            SeasonView blank = view(first, months, ctx.queryParams("leaves"), false);
            page.show(ctx, "New season", "review/season.jte", with(blank, wrong, "", ""));
            return;
        }
        page.show(ctx, "New season", "review/season.jte", view(first, months, ctx.queryParams("leaves"), true));
    }

    private static String months(@org.jspecify.annotations.Nullable String typed) {
        return typed == null ? String.valueOf(NewSeason.DEFAULT_MONTHS) : typed.strip();
    }

    /** The season after the one that holds today. */
    private String next() {
        return Season.of(LocalDate.now(clock)).first().plusYears(1).toString();
    }

    private static FormErrors wrong(String first, String months) {
        FormErrors wrong = FormErrors.none();
        try {
            BeginSeason.day(first);
        } catch (IllegalArgumentException e) {
            wrong = wrong.with("first", String.valueOf(e.getMessage()));
        }
        try {
            BeginSeason.months(months);
        } catch (IllegalArgumentException e) {
            wrong = wrong.with("months", String.valueOf(e.getMessage()));
        }
        return wrong;
    }

    private void begin(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        String first = typed.typed("first");
        String months = typed.typed("months");
        List<String> leaving = ctx.formParams("leaves");
        var begin = new BeginSeason.Begin(first, months, leaving, ctx.formParams("seen"));
        Answer answer = forms.submit(ctx, "season.begin", begin);
        String words = FormActs.words(ctx, answer);
        if (words.isEmpty()) {
            SeasonView blank = view(first, months, List.of(), false);
            page.fragment(
                    ctx,
                    "review/_season.jte",
                    with(blank, FormErrors.none(), "", "The season from " + first + " has begun."));
            return;
        }
        FormErrors wrong = wrong(first, months);
        page.fragment(ctx, "review/_season.jte", with(view(first, months, leaving, wrong.isEmpty()), wrong, words, ""));
    }

    private static SeasonView with(SeasonView v, FormErrors form, String problem, String saved) {
        return new SeasonView(v.first(), v.months(), v.people(), v.shown(), v.words(), form, problem, saved);
    }

    /** @param shown only for a day and months that can be read */
    private SeasonView view(String first, String months, List<String> leaving, boolean shown) {
        Map<String, String> names = record.people().names();
        return record.read(tx -> {
            List<SeasonView.Person> people = CrewStore.all(tx).stream()
                    .filter(c -> c.eventId().isEmpty())
                    .map(CrewAdded::personId)
                    .distinct()
                    .map(id -> new SeasonView.Person(id, names.getOrDefault(id, "someone"), leaving.contains(id)))
                    .sorted(Comparator.comparing(SeasonView.Person::name))
                    .toList();
            List<String> words = shown
                    ? BeginSeason.changes(tx, BeginSeason.day(first), BeginSeason.months(months), leaving, names)
                            .words()
                    : List.of();
            return new SeasonView(first, months, people, shown, words, FormErrors.none(), "", "");
        });
    }
}
