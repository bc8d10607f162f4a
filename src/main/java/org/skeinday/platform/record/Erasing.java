package org.skeinday.platform.record;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.skeinday.platform.db.ErasedPeople;
import org.skeinday.platform.db.Tx;

/**
 * A person's name is erased: the chain keeps the id and that it was erased, the name goes from people.json with the same
 * act, and at every later start, so that no kill in between brings it back.
 */
public final class Erasing {
    static final String KIND = "person.erased";

    /** Fact {@code person.erased}. @param atMs by the server's clock, epoch ms */
    public record PersonErased(String personId, long atMs) {}

    /** @param name as it is kept, typed again, so that nobody is erased by a slip */
    public record Erase(String person, String name) {}

    private Erasing() {}

    public static List<FactKind> facts() {
        return List.of(FactKind.of(
                KIND, PersonErased.class, (tx, fact) -> ErasedPeople.note(tx, fact.personId(), fact.atMs())));
    }

    public static List<ActKind<?>> kinds(People people) {
        return List.of(new ActKind<>("person.erase", Erase.class, (tx, context, e) -> decide(people, context, e)));
    }

    private static Decision decide(People people, ActContext context, Erase erase) {
        String name = people.names().get(erase.person());
        if (name == null) {
            return Decision.unknown("There is no such person any more; look again");
        }
        if (!name.equals(erase.name().strip())) {
            return Decision.refused(
                    "name", "Type the name exactly as it stands here, to erase this person and no other");
        }
        return Decision.decided(
                Set.of("contest", "attempts", "checks", "devices"), fact(erase.person(), context.now()));
    }

    /** That this person was erased, then. */
    static Fact fact(String person, Instant at) {
        return Fact.of(KIND, new PersonErased(person, at.toEpochMilli()));
    }

    /** The people whom these facts erase. */
    static Set<String> of(List<Fact> facts) {
        return facts.stream()
                .filter(f -> f.kind().equals(KIND))
                .map(f -> ((PersonErased) f.body()).personId())
                .collect(Collectors.toSet());
    }

    /** Without those whose names were erased: a name that comes with such an id would be lost at the next start. */
    static Map<String, String> kept(Tx tx, Map<String, String> names) {
        return names.isEmpty() ? names : without(names, all(tx));
    }

    static Set<String> all(Tx tx) {
        return ErasedPeople.all(tx);
    }

    static Map<String, String> without(Map<String, String> names, Set<String> erased) {
        Map<String, String> left = new LinkedHashMap<>(names);
        left.keySet().removeAll(erased);
        return left;
    }
}
