package org.skeinday.steps.action;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.steps.Checklist;
import org.skeinday.steps.ChecklistRevised;
import org.skeinday.steps.Checklists;
import org.skeinday.steps.ItemAnswer;
import org.skeinday.steps.ListRules;
import org.skeinday.steps.Step;
import org.skeinday.steps.Way;
import org.skeinday.steps.store.ListStore;

/** A coach words a list anew: its next revision. A list stays at its pause. */
public final class ReviseList {
    private static final int LONGEST_TITLE = 120;
    private static final int LONGEST_NEXT = 300;

    private ReviseList() {}

    /** One item as typed; one without text is none. @param id empty for a new one */
    public record Item(String id, String text, String reason, boolean critical, String answer) {}

    /** @param seen the revision that the form showed */
    public record Revision(
            String list, int seen, String title, String way, boolean aloud, String next, List<Item> items) {}

    static Decision decide(Tx tx, ActContext context, Revision typed) {
        Checklist now = ListStore.find(tx, typed.list()).orElse(null);
        if (now == null) {
            return Decision.unknown("There is no such list; look again");
        }
        if (now.revision() != typed.seen()) {
            return new Decision.Outdated("Someone else was quicker: '" + now.title() + "' is at revision "
                    + now.revision() + " by now. Look again, then decide.");
        }
        if (typed.title().length() > LONGEST_TITLE || typed.next().length() > LONGEST_NEXT) {
            return Decision.refused(
                    "title",
                    "A title has at most " + LONGEST_TITLE + " characters, what comes next at most " + LONGEST_NEXT);
        }
        try {
            Checklist next = new Checklist(
                    now.id(),
                    now.revision() + 1,
                    typed.title().strip(),
                    now.moment(),
                    Way.ofWord(typed.way()),
                    typed.aloud(),
                    typed.next().strip(),
                    steps(context, typed.items()));
            Optional<String> no = ListRules.refusesAnew(next);
            if (no.isPresent()) {
                return Decision.refused("list", no.get());
            }
            @Nullable String person = context.personOrNull();
            return Decision.decided(
                    Set.of("checks"),
                    Fact.of(
                            "checklist.revised",
                            new ChecklistRevised(
                                    Checklists.rows(next), context.now().toEpochMilli(), person)));
        } catch (IllegalArgumentException e) {
            return Decision.refused("list", String.valueOf(e.getMessage()));
        }
    }

    private static List<Step> steps(ActContext context, List<Item> items) {
        List<Step> steps = new ArrayList<>();
        for (Item item : items) {
            if (!item.text().isBlank()) {
                String id = item.id().isBlank() ? context.nextId() : item.id();
                steps.add(new Step(
                        id,
                        item.text().strip(),
                        item.reason().strip(),
                        item.critical(),
                        ItemAnswer.ofWord(item.answer())));
            }
        }
        return steps;
    }
}
