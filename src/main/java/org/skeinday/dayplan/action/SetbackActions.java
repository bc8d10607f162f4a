package org.skeinday.dayplan.action;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.skeinday.contest.store.CrewStore;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.contest.store.EventStore;
import org.skeinday.dayplan.Setback;
import org.skeinday.dayplan.SetbackOver;
import org.skeinday.dayplan.store.PlanStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Somebody is away, a model is mended or stuck aloft; and that it is over. */
public final class SetbackActions {
    private static final Set<String> TOPICS = Set.of("plan");
    private static final int MINUTE_S = 60;

    /**
     * What has happened.
     *
     * @param who a person's id for {@link Setback#AWAY}, else the entry's id
     * @param minutes as typed; empty for a person who does not come back today
     * @param cure minutes for the glue as typed; empty for none
     * @param before number of the first attempt that needs the model; empty for the next
     */
    public record Tell(String event, String kind, String who, String minutes, String cure, String before) {}

    /** That it is over. */
    public record End(String event, String id) {}

    private SetbackActions() {}

    public static List<ActKind<?>> kinds() {
        return List.of(
                new ActKind<>("day.tell-setback", Tell.class, SetbackActions::tell),
                new ActKind<>("day.end-setback", End.class, SetbackActions::end));
    }

    static Decision tell(Tx tx, ActContext context, Tell tell) {
        if (EventStore.find(tx, tell.event()).isEmpty()) {
            return Decision.unknown("There is no such event any more; look again");
        }
        if (!Setback.KINDS.contains(tell.kind()) || !isKnown(tx, tell)) {
            return Decision.refused("Choose who is away, or which entry's model it is, from the list");
        }
        boolean away = tell.kind().equals(Setback.AWAY);
        Optional<Integer> minutes = whole(tell.minutes(), 0, 720);
        Optional<Integer> cure = tell.cure().isEmpty() ? Optional.of(0) : whole(tell.cure(), 0, 720);
        Optional<Integer> before = tell.before().isEmpty() ? Optional.of(1) : whole(tell.before(), 1, 1000);
        if (minutes.isEmpty() && !(away && tell.minutes().isEmpty()) || cure.isEmpty() || before.isEmpty()) {
            return Decision.refused("Minutes are whole numbers from 0 to 720, for example 10"
                    + (away ? "; leave them empty for the rest of the day" : "; attempts are numbered from 1"));
        }
        if (PlanStore.setbacks(tx, tell.event()).stream()
                .anyMatch(s -> s.kind().equals(tell.kind()) && s.who().equals(tell.who()))) {
            return Decision.refused("That is known already: say first that it is over");
        }
        @Nullable Integer lasts = minutes.map(m -> m * MINUTE_S).orElse(null);
        var fact = new Setback(
                context.ownId(),
                tell.event(),
                tell.kind(),
                tell.who(),
                before.get(),
                context.now().toEpochMilli(),
                lasts,
                cure.get() * MINUTE_S,
                context.person());
        return Decision.decided(TOPICS, Fact.of("day.setback", fact));
    }

    private static boolean isKnown(Tx tx, Tell tell) {
        return tell.kind().equals(Setback.AWAY)
                ? CrewStore.ofEvent(tx, tell.event()).stream()
                        .anyMatch(c -> c.personId().equals(tell.who()))
                : EntryStore.find(tx, tell.who())
                        .filter(e -> e.eventId().equals(tell.event()))
                        .isPresent();
    }

    private static Optional<Integer> whole(String typed, int low, int high) {
        if (!typed.matches("\\d{1,4}")) {
            return Optional.empty();
        }
        return Optional.of(Integer.parseInt(typed)).filter(n -> n >= low && n <= high);
    }

    static Decision end(Tx tx, ActContext context, End end) {
        boolean open = PlanStore.setbacks(tx, end.event()).stream().anyMatch(s -> s.id().equals(end.id()));
        return open
                ? Decision.decided(
                        TOPICS,
                        Fact.of(
                                "day.setback-over",
                                new SetbackOver(end.id(), context.now().toEpochMilli())))
                : Decision.unknown("That is over already; look again");
    }
}
