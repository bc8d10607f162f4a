package org.skeinday.steps.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.platform.http.FormActs;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Refusal;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.ActStore;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ItemAnswer;
import org.skeinday.steps.ListRules;
import org.skeinday.steps.Step;
import org.skeinday.steps.Way;
import org.skeinday.steps.store.ListStore;

/** The lists to be changed, and the form of one. */
public final class ListPages {
    /** For items of the coach\'s own. */
    private static final int EMPTY_ROWS = 3;

    private final ActStore record;
    private final FormActs forms;
    private final Page page;

    public ListPages(ActStore record, FormActs forms, Page page) {
        this.record = record;
        this.forms = forms;
        this.page = page;
    }

    public void register(Routes routes) {
        routes.get("/checks/lists", Role.CAPTAIN, ctx -> page.show(ctx, "Lists", "steps/lists.jte", all()));
        routes.get(
                "/checks/lists/{list}",
                Role.CAPTAIN,
                ctx -> page.show(ctx, "A list", "steps/list.jte", view(ctx.pathParam("list"), FormErrors.none())));
        routes.post("/checks/lists/{list}", Role.CAPTAIN, this::revise);
    }

    private PrintView all() {
        return record.read(tx -> new PrintView(ListStore.all(tx)));
    }

    private void revise(Context ctx) {
        FormErrors typed = FormErrors.of(ctx);
        List<Map<String, Object>> items = new ArrayList<>();
        for (int i = 0; i < Checklist.MOST; i++) {
            items.add(Map.of(
                    "id", typed.typed("id" + i),
                    "text", typed.typed("text" + i),
                    "reason", typed.typed("reason" + i),
                    "critical", typed.typed("critical" + i).equals("yes"),
                    "answer", typed.typedOr("answer" + i, ItemAnswer.OK.word())));
        }
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("list", ctx.pathParam("list"));
        content.put("seen", typed.typed("seen").matches("\\d{1,4}") ? Integer.parseInt(typed.typed("seen")) : 0);
        content.put("title", typed.typed("title"));
        content.put("way", typed.typed("way"));
        content.put("aloud", typed.typed("aloud").equals("yes"));
        content.put("next", typed.typed("next"));
        content.put("items", items);
        FormErrors form = FormActs.errors(ctx, forms.submit(ctx, "checklist.revise", content), "list");
        if (form.isEmpty()) {
            ctx.header("HX-Redirect", "/checks/lists");
            ctx.status(204);
            return;
        }
        page.fragment(ctx, "steps/_list.jte", view(ctx.pathParam("list"), form));
    }

    private ListView view(String id, FormErrors form) {
        Checklist list =
                record.read(tx -> ListStore.find(tx, id)).orElseThrow(() -> Refusal.notFound("There is no such list."));
        List<Step> steps = list.steps();
        List<ListView.Row> rows = new ArrayList<>();
        int shown = form.isEmpty() ? Math.min(Checklist.MOST, steps.size() + EMPTY_ROWS) : Checklist.MOST;
        for (int i = 0; i < shown; i++) {
            rows.add(row(i, i < steps.size() ? steps.get(i) : null, form));
        }
        boolean sent = !form.isEmpty();
        return new ListView(
                list.id(),
                list.revision(),
                list.moment().word().replace('-', ' '),
                form.typedOr("title", list.title()),
                form.typedOr("way", list.way().word()),
                sent ? form.typed("aloud").equals("yes") : list.aloud(),
                form.typedOr("next", list.next()),
                rows,
                Way.WORDS,
                ItemAnswer.WORDS,
                ListRules.advice(list),
                form.message("list") + form.message("title"));
    }

    private static ListView.Row row(int i, @org.jspecify.annotations.Nullable Step step, FormErrors form) {
        boolean sent = !form.isEmpty();
        return new ListView.Row(
                i,
                form.typedOr("id" + i, step == null ? "" : step.id()),
                form.typedOr("text" + i, step == null ? "" : step.text()),
                form.typedOr("reason" + i, step == null ? "" : step.reason()),
                sent ? form.typed("critical" + i).equals("yes") : step != null && step.critical(),
                form.typedOr(
                        "answer" + i,
                        step == null ? ItemAnswer.OK.word() : step.answer().word()));
    }
}
