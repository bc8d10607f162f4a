package org.skeinday.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.skeinday.contest.WindowAdded;

/** When each model must be at hand: one cannot fly in two windows at once. */
final class ModelOverlap {
    private final Moments moments;
    private final Map<String, Set<String>> models = new HashMap<>();
    private final Map<String, String> entries = new HashMap<>();
    private final Map<String, String> names = new HashMap<>();
    private final List<WindowAdded> windows = new ArrayList<>();

    ModelOverlap(Day there, Moments moments) {
        this.moments = moments;
        there.entries().forEach(e -> entries.put(e.id(), e.name()));
        there.models().forEach(m -> names.put(m.id(), m.name()));
        there.entryModels()
                .forEach(has -> models.computeIfAbsent(has.entryId(), e -> new HashSet<>())
                        .add(has.modelId()));
        windows.addAll(there.windows());
    }

    void named(String model, String name) {
        names.put(model, name);
    }

    void flies(String entry, String name, List<String> own) {
        entries.put(entry, name);
        models.put(entry, new HashSet<>(own));
    }

    /** Notes a window that overlaps another of the same entry or with the same model; a window for all does not. */
    void check(Row row, WindowAdded window) {
        windows.stream()
                .filter(other -> other.opensAtMs() < window.closesAtMs() && window.opensAtMs() < other.closesAtMs())
                .flatMap(other -> why(window, other).stream())
                .findFirst()
                .ifPresent(why -> row.error("opens", why, "move one of the two, or let another model fly"));
        windows.add(window);
    }

    private Optional<String> why(WindowAdded one, WindowAdded other) {
        String a = one.entryId();
        String b = other.entryId();
        if (a == null || b == null) {
            return Optional.empty();
        }
        String overlaps = "this overlaps the window of " + entries.getOrDefault(b, "another entry") + " from "
                + moments.text(other.opensAtMs()) + " to " + moments.text(other.closesAtMs());
        if (a.equals(b)) {
            return Optional.of(overlaps);
        }
        return models.getOrDefault(a, Set.of()).stream()
                .filter(models.getOrDefault(b, Set.of())::contains)
                .map(model -> overlaps + ", and both fly " + names.getOrDefault(model, "the same model"))
                .sorted()
                .findFirst();
    }
}
