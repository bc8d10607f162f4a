package org.skeinday.review.action;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.skeinday.contest.store.EventStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;
import org.skeinday.review.ChangeNextTime;
import org.skeinday.review.store.ReviewFacts;

/** What the team decides when the flying is over. */
public final class EveningActions {
    private static final Set<String> TOPICS = Set.of("evening");

    /**
     * What to change next time, as typed.
     *
     * @param seen the lines that the form had shown
     */
    public record Change(String event, List<String> lines, List<String> seen) {}

    private EveningActions() {}

    /** @param people the names known now, by person id */
    public static List<ActKind<?>> kinds(Supplier<Map<String, String>> people) {
        return List.of(
                new ActKind<>("evening.change-next-time", Change.class, EveningActions::change),
                new ActKind<>(
                        "season.begin",
                        BeginSeason.Begin.class,
                        (tx, context, begin) -> BeginSeason.decide(tx, context, begin, people.get())));
    }

    static Decision change(Tx tx, ActContext context, Change typed) {
        if (EventStore.find(tx, typed.event()).isEmpty()) {
            return Decision.unknown("There is no such event any more; look again");
        }
        List<String> there = ReviewFacts.change(tx, typed.event()).lines();
        if (!there.equals(typed.seen())) {
            return new Decision.Outdated("Someone else has written meanwhile: "
                    + (there.isEmpty() ? "all lines were taken back" : String.join(" · ", there))
                    + ". Save again to put yours in their place.");
        }
        try {
            return Decision.decided(
                    TOPICS, Fact.of("event.change-next-time", ChangeNextTime.typed(typed.event(), typed.lines())));
        } catch (IllegalArgumentException e) {
            return Decision.refused("lines", String.valueOf(e.getMessage()));
        }
    }
}
