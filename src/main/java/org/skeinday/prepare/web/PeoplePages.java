package org.skeinday.prepare.web;

import io.javalin.http.Context;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.skeinday.contest.CrewAdded;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Erasing;

/** Everybody whose name is kept, and how a name is erased. */
public final class PeoplePages {
    private final PrepareContext desk;

    public PeoplePages(PrepareContext desk) {
        this.desk = desk;
    }

    public void register(Routes routes) {
        routes.get(
                "/people",
                Role.COACH,
                ctx -> desk.page().show(ctx, "People", "prepare/people.jte", view(FormErrors.none(), "")));
        routes.post("/people/erase", Role.COACH, this::erase);
    }

    private void erase(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        var erase = new Erasing.Erase(typed.typed("person"), typed.typed("name"));
        FormErrors form = FormActs.errors(ctx, desk.forms().submit(ctx, "person.erase", erase), "name");
        desk.page()
                .fragment(
                        ctx,
                        "prepare/_people.jte",
                        view(form, form.isEmpty() ? "The name is erased. Where it stood, it says someone." : ""));
    }

    private PeopleView view(FormErrors form, String said) {
        Map<String, String> names = desk.record().people().names();
        Set<String> crew = desk.record()
                .read(tx -> CrewStore.all(tx).stream().map(CrewAdded::personId).collect(Collectors.toSet()));
        List<PeopleView.Person> people = names.entrySet().stream()
                .map(e -> new PeopleView.Person(
                        e.getKey(),
                        e.getValue(),
                        crew.contains(e.getKey()) ? "crew" : "named in the record",
                        form.typed("person").equals(e.getKey()) ? form.message("name") : ""))
                .sorted(Comparator.comparing(PeopleView.Person::name).thenComparing(PeopleView.Person::id))
                .toList();
        return new PeopleView(people, said);
    }
}
