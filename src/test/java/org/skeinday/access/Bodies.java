package org.skeinday.access;

import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** What each form is filled in with so that it is taken: what its page offers, and what a person would type. */
final class Bodies {
    /** Typed by a person; fields that the pages fill in are read from them. */
    private static final Map<String, Map<String, String>> TYPED = Map.ofEntries(
            Map.entry("/practice", Map.of("crank-turns", "150", "time", "1:05", "valid", "yes", "earlier", "yes")),
            Map.entry("/attempt/announce", Map.of("announced", "1:02")),
            Map.entry("/attempt/gate", Map.of("adult", "Mrs Grebe", "passed", "checked by word of mouth")),
            Map.entry("/winding/gate", Map.of("adult", "Mrs Grebe", "passed", "checked by word of mouth")),
            Map.entry("/watch/take", Map.of("slot", "2")),
            Map.entry("/attempt/{id}/protest", Map.of("words", "The launch was late")),
            Map.entry("/evening/season", Map.of("first", "2027-09-01", "months", "12")),
            Map.entry("/checks/gate", Map.of("adult", "Mrs Grebe", "passed", "checked by word of mouth")),
            Map.entry("/bench/waits", Map.of("name", "soak", "least", "5", "wished", "10", "longest", "")),
            Map.entry("/hall/air", Map.of("celsius", "18", "humidity", "50", "hall", "Marsh hall")),
            Map.entry("/hall/describe", Map.of("hall", "Marsh hall", "ceiling", "9 m")),
            Map.entry("/hall/measure", Map.of("hall", "Marsh hall", "lane", "A", "length", "9 m", "past", "4 m")),
            Map.entry("/evening/change", Map.of("change", "Rest the motors longer", "words", "Rest the motors longer")),
            Map.entry("/winding/aim", Map.of("launch", "1.2", "ceiling", "3", "unit", "mN·m")),
            Map.entry("/prepare/{kind}/save", Map.of("tag", "Z9", "loop", "18 in", "mass", "1.6 g", "direction", "cw")),
            Map.entry("/units", Map.of("units", "inch")),
            Map.entry("/light", Map.of("light", "dark")),
            Map.entry("/laptop/lend", Map.of()),
            Map.entry("/laptop/back", Map.of("pin", Demo.PIN)),
            Map.entry("/attempt/{id}/sign", Map.of("as", "captain", "pin", Demo.PIN)),
            Map.entry("/attempt/{id}/reopen", Map.of("pin", Demo.PIN, "reason", "a watch was misread")),
            Map.entry("/attempt/{id}/settle", Map.of("words", "The time stands")),
            Map.entry("/attempt/close", Map.of("why", "as read")),
            Map.entry("/attempt/parted", Map.of("place", "strand")),
            Map.entry("/attempt/run-back", Map.of("turns", "150")),
            Map.entry("/motor/run-back", Map.of("turns", "150")),
            Map.entry("/watch/judge", Map.of("slot", "1", "what", "failed", "why", "it stood still")),
            Map.entry("/winding/count", Map.of("turns", "150", "crank-turns", "150")),
            Map.entry("/winding/landed", Map.of("left", "20", "turns-left", "20", "touched", "no")),
            Map.entry("/winding/motor/{motor}/count", Map.of("turns", "150", "crank-turns", "150")),
            Map.entry("/evening/flight/{id}", Map.of("valid", "yes")),
            Map.entry("/attempt/give-up", Map.of("reason", "the frame broke", "again", "yes")));

    /** What a form is about: where its page does not offer it yet, what another page offers. */
    private static final List<String> THERE = List.of("attempt", "event");

    private final House house;
    private final Visitor laptop;
    private final Map<String, Map<String, String>> offered = new HashMap<>();
    /** The page that fills in most of a form, by the form's address: what it shows is read anew before it is sent back. */
    private final Map<String, String> pages = new HashMap<>();

    Bodies(House house) throws Exception {
        this.house = house;
        this.laptop = house.laptop;
        Crawl crawl = Crawl.of(house, laptop);
        offered.putAll(crawl.forms());
        Map<String, Integer> most = new HashMap<>();
        crawl.pages()
                .forEach((page, answer) -> Crawl.formsOn(answer.body()).forEach((form, fields) -> {
                    int filled = (int) fields.values().stream()
                            .filter(value -> !value.isEmpty())
                            .count();
                    if (filled > most.getOrDefault(form, -1)) {
                        most.put(form, filled);
                        pages.put(form, page);
                    }
                }));
    }

    private @Nullable String there(String field) {
        return field.equals("attempt")
                ? house.attempt
                : new TreeMap<>(offered)
                        .values().stream()
                                .map(form -> form.getOrDefault(field, ""))
                                .filter(value -> !value.isEmpty())
                                .findFirst()
                                .orElse(null);
    }

    /** Where this route is posted to: as some page offers it, else with ids that are there. */
    String path(String route) {
        String filled = filled(route);
        Pattern alike = Pattern.compile(route.replaceAll("\\{[^}]*}", "[^/]+"));
        return pages.containsKey(filled)
                ? filled
                : pages.keySet().stream()
                        .filter(form -> alike.matcher(form).matches())
                        .min(Comparator.naturalOrder())
                        .orElse(filled);
    }

    private String filled(String route) {
        return house.rights().stream()
                .filter(right -> right.method().equals("POST") && right.path().equals(route))
                .findFirst()
                .map(house::filled)
                .orElseThrow(() -> new AssertionError("The table names " + route + ", which is not served"));
    }

    /** Those that pages offer, and what a person types. @param route as the table of routes has it */
    Map<String, String> of(String route) throws IOException, InterruptedException {
        String path = path(route);
        Map<String, String> fields = new LinkedHashMap<>(offered.getOrDefault(path, Map.of()));
        if (pages.containsKey(path)) {
            String page = laptop.get(pages.get(path)).body();
            fields.putAll(Crawl.formsOn(page).getOrDefault(path, Map.of()));
        }
        fields.putAll(TYPED.getOrDefault(route, Map.of()));
        THERE.forEach(name -> fields.computeIfAbsent(name, this::there));
        fields.put("act", laptop.newId());
        return fields;
    }
}
