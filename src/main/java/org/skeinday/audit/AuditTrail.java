package org.skeinday.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Puts facts in their order together as changes: what each thing was before a line of the record, and what after it. */
public final class AuditTrail {
    /** Several values of one field. */
    static final String AND = "\n";

    private final Map<String, Map<AuditField, String>> known = new HashMap<>();
    private final Map<String, String> names = new HashMap<>();
    private final List<AuditLine> lines = new ArrayList<>();

    private AuditTrail() {}

    /** @param rows in the order of the record */
    public static List<AuditLine> of(List<AuditRow> rows) {
        var trail = new AuditTrail();
        Map<Long, List<AuditRow>> byLine =
                rows.stream().collect(Collectors.groupingBy(AuditRow::n, LinkedHashMap::new, Collectors.toList()));
        byLine.values().forEach(trail::line);
        return List.copyOf(trail.lines);
    }

    /** What one line of the record says of one thing is one change. */
    private void line(List<AuditRow> rows) {
        String reason = rows.stream()
                .map(row -> row.said().getOrDefault(AuditedKind.REASON, ""))
                .filter(why -> !why.isEmpty())
                .findFirst()
                .orElse("");
        rows.stream()
                .collect(Collectors.groupingBy(AuditTrail::group, LinkedHashMap::new, Collectors.toList()))
                .values()
                .forEach(ofThing -> change(ofThing, reason));
    }

    /** What only says something stands for itself. */
    private static String group(AuditRow row) {
        return row.kind().does() == AuditedKind.Does.SAYS
                ? row.kind().kind() + " " + row.about() + " " + row.said()
                : row.about();
    }

    private void change(List<AuditRow> rows, String reason) {
        AuditRow first = rows.get(0);
        Map<AuditField, String> before = known.getOrDefault(first.about(), Map.of());
        Map<AuditField, String> after = new LinkedHashMap<>(before);
        rows.forEach(row -> apply(row, after));
        boolean says = first.kind().does() == AuditedKind.Does.SAYS;
        List<AuditLine.Change> changes = changes(says ? Map.of() : before, after);
        if (!says) {
            known.put(first.about(), after);
        }
        boolean tells = says || first.kind().does() == AuditedKind.Does.ENDS || !changes.isEmpty();
        if (tells) {
            AuditRow last = rows.get(rows.size() - 1);
            AuditRow named = last.kind().does() == AuditedKind.Does.ADDS ? first : last;
            lines.add(new AuditLine(
                    first.n(),
                    first.atMs(),
                    first.device(),
                    role(first.device()),
                    first.personId(),
                    first.broughtBy(),
                    first.kind().topic(),
                    named.kind().words(),
                    first.kind().thing(),
                    first.subject(),
                    first.said().getOrDefault(AuditedKind.ATTEMPT, ""),
                    named(first, after),
                    changes,
                    reason));
        }
    }

    private String role(String device) {
        return known.getOrDefault(AuditedKind.Thing.DEVICE + " " + device, Map.of()).entrySet().stream()
                .filter(field -> field.getKey().name().equals("role"))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
    }

    private static void apply(AuditRow row, Map<AuditField, String> after) {
        switch (row.kind().does()) {
            case SETS, SAYS -> {
                after.clear();
                row.kind().fields().forEach(field -> after.put(field, row.said().getOrDefault(field.name(), "")));
            }
            case ENDS -> after.clear();
            case ADDS ->
                row.kind()
                        .fields()
                        .forEach(field -> after.merge(
                                field, row.said().getOrDefault(field.name(), ""), (some, more) -> some + AND + more));
        }
    }

    private static List<AuditLine.Change> changes(Map<AuditField, String> before, Map<AuditField, String> after) {
        Set<AuditField> fields = new LinkedHashSet<>(after.keySet());
        fields.addAll(before.keySet());
        return fields.stream()
                .map(field ->
                        new AuditLine.Change(field, before.getOrDefault(field, ""), after.getOrDefault(field, "")))
                .filter(change -> !change.before().equals(change.after()))
                .toList();
    }

    /** As it is called, or was when it was there. */
    private String named(AuditRow row, Map<AuditField, String> after) {
        after.forEach((field, value) -> {
            if (field.name().equals("name") && !value.isEmpty()) {
                names.put(row.subject(), value);
            }
        });
        return names.getOrDefault(row.subject(), "");
    }
}
