package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import org.skeinday.platform.http.Routes;

/**
 * Forms with nonsense in some of their fields, mended field by field until they are taken: so that what lies behind the
 * checks of a form is asked too. A form that is refused with every field right, because the day is not there yet, is asked
 * once and left.
 */
final class FormFuzz {
    /** Ends the program or the laptop's rights, or makes no act of its own. */
    private static final Set<String> LEFT_OUT = Set.of(
            "/laptop/stop", "/laptop/pin", "/laptop/lend", "/taps", "/taps/file", "/devices/{id}/end", "/people/erase");

    /** In this order: each ends the attempt that the others are about. */
    private static final List<String> LAST =
            List.of("/attempt/{id}/reopen", "/attempt/take-back", "/attempt/close", "/attempt/give-up");

    /** What the writer says when a deed or its rows failed: no answer over 499, and no refusal of ours either. */
    private static final String FAULT = "through a fault of the program";

    private final House house;
    private Bodies bodies;
    private final SplittableRandom random;
    private final List<String> found = new ArrayList<>();
    private final Set<String> taken = new TreeSet<>();
    private final Map<String, String> notYet = new TreeMap<>();
    private int sent;
    private int reached;

    FormFuzz(House house, long seed) throws Exception {
        this.house = house;
        this.bodies = new Bodies(house);
        this.random = new SplittableRandom(seed);
    }

    /**
     * The same on another day for the forms that were not taken so far, so that those are asked too that need a wind or a
     * flight.
     *
     * @param before what was asked on other days, which is counted with this one
     */
    private List<String> askOthers(FormFuzz before, int rounds) throws Exception {
        taken.addAll(before.taken);
        notYet.putAll(before.notYet);
        sent = before.sent;
        reached = before.reached;
        List<String> open = new ArrayList<>(asked());
        bodies = new Bodies(house); // what was entered opens other forms
        open.addAll(asked());
        askAgain(open, rounds);
        return found;
    }

    private List<String> asked() throws Exception {
        List<String> open = new ArrayList<>();
        for (String route : forms()) {
            if (!taken.contains(route) && isTaken(route, bodies.of(route))) {
                open.add(route);
            }
        }
        return open;
    }

    /**
     * Asks the forms that need a wind, a break, a flight or an official time.
     *
     * @param root for the days, one for each stage
     */
    FormFuzz onOtherDays(Path root, Staged... stages) throws Exception {
        FormFuzz all = this;
        for (Staged stage : stages) {
            try (House day = House.at(root.resolve("day-" + stage), stage)) {
                FormFuzz more = new FormFuzz(day, random.nextLong());
                assertEquals(List.of(), more.askOthers(all, 3), stage.toString());
                all = more;
            }
        }
        System.out.println("Forms: " + all.taken().size() + " of " + forms().size()
                + " were taken at least once on all days, " + all.reached() + " of " + all.sent() + " requests");
        all.notYet().forEach((form, said) -> System.out.println("Still never taken: " + form + " " + said));
        return all;
    }

    /** Errors of ours, and refusals that changed the record. @param rounds through all forms */
    List<String> ask(int rounds) throws Exception {
        List<String> open = new ArrayList<>();
        for (String route : forms()) {
            if (isTaken(route, bodies.of(route))) {
                open.add(route);
            }
        }
        Bodies before = bodies;
        bodies = new Bodies(house); // what was entered is offered to be changed, used and removed
        for (String route : forms()) {
            boolean offersMore = !withoutAct(before.of(route)).equals(withoutAct(bodies.of(route)));
            if (offersMore && !open.contains(route) && isTaken(route, bodies.of(route))) {
                open.add(route);
            }
        }
        askAgain(open, rounds);
        return found;
    }

    private void askAgain(List<String> open, int rounds) throws Exception {
        for (int round = 0; round < rounds; round++) {
            for (String route : List.copyOf(open)) {
                if (!mended(route)) {
                    open.remove(route);
                }
            }
        }
    }

    private static Map<String, String> withoutAct(Map<String, String> fields) {
        fields.remove("act");
        return fields;
    }

    private List<String> forms() {
        return house.rights().stream()
                .filter(right -> right.method().equals("POST") && right.maxBytes() < Routes.IMPORT_BODY)
                .map(Routes.Right::path)
                .filter(path -> !LEFT_OUT.contains(path) && !path.startsWith("/join"))
                .sorted(Comparator.<String>comparingInt(LAST::indexOf).thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    /** Whether it was taken in the end. */
    private boolean mended(String route) throws Exception {
        Map<String, String> right = bodies.of(route);
        Map<String, String> fields = new LinkedHashMap<>(right);
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(2) && right.size() > 1; i++) {
            String name = List.copyOf(right.keySet()).get(random.nextInt(right.size()));
            if (!name.equals("act") && !wrong.contains(name)) {
                fields.put(name, Fuzz.HOSTILE.get(random.nextInt(Fuzz.HOSTILE.size())));
                wrong.add(name);
            }
        }
        boolean through = isTaken(route, fields);
        while (!through && !wrong.isEmpty()) {
            String name = wrong.remove(random.nextInt(wrong.size()));
            fields.put(name, String.valueOf(right.get(name)));
            through = isTaken(route, fields);
        }
        return through;
    }

    private boolean isTaken(String route, Map<String, String> fields) throws Exception {
        long before = size();
        HttpResponse<String> answer = house.laptop.form(bodies.path(route), fields);
        boolean through = answer.statusCode() < 400;
        sent++;
        if (through) {
            reached++;
            taken.add(route);
        }
        boolean fault = answer.statusCode() >= 500 || answer.body().contains(FAULT);
        if (fault || (!through && before != size())) {
            found.add(route + " " + cut(fields.toString()) + ": " + answer.statusCode());
        }
        if (!through) {
            notYet.putIfAbsent(
                    route, answer.statusCode() + " " + cut(answer.body().replaceAll("<[^>]*>|\\s+", " ")));
        }
        return through;
    }

    private static String cut(String text) {
        return text.length() > 300 ? text.substring(0, 300) + "…" : text;
    }

    /** Forms that were never taken, with what was said first. */
    Map<String, String> notYet() {
        Map<String, String> never = new TreeMap<>(notYet);
        never.keySet().removeAll(taken);
        return never;
    }

    private long size() throws IOException {
        return Files.size(house.folder.resolve("journal.jsonl"));
    }

    /** Requests in all. */
    int sent() {
        return sent;
    }

    /** Requests that were taken. */
    int reached() {
        return reached;
    }

    /** Forms that were taken at least once. */
    Set<String> taken() {
        return taken;
    }
}
