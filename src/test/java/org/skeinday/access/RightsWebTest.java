package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.Demo;
import org.skeinday.TapTable;
import org.skeinday.Visitor;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Json;

/** Who may use which route: the whole table, as the router has it. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Timeout(120)
class RightsWebTest {
    private static final Path REVIEWED = Path.of("src/test/resources/access/routes.csv");
    private static final Path MADE = Path.of("target/routes.csv");

    @TempDir
    static Path root;

    private House house;

    @BeforeAll
    void start() throws Exception {
        house = new House(root.resolve("day"));
    }

    @AfterAll
    void stop() throws Exception {
        house.close();
    }

    @Test
    void the_table_of_rights_is_the_one_that_was_reviewed() throws Exception {
        String made = "method,path,least role,advice,largest body in bytes\n"
                + Stream.concat(
                                house.rights().stream().map(RightsWebTest::line),
                                TapTable.rights().entrySet().stream()
                                        .map(tap -> "TAP," + tap.getKey() + ","
                                                + tap.getValue().word() + ",,"))
                        .sorted()
                        .collect(Collectors.joining("\n"))
                + "\n";
        Files.writeString(MADE, made, StandardCharsets.UTF_8);
        assertEquals(
                Files.readString(REVIEWED, StandardCharsets.UTF_8),
                made,
                "A right was changed: read it again, then copy " + MADE + " to " + REVIEWED);
    }

    private static String line(Routes.Right right) {
        return right.method() + "," + right.path() + "," + role(right) + "," + (right.advice() ? "advice" : "") + ","
                + right.maxBytes();
    }

    private static String role(Routes.Right right) {
        return right.minimum() == null ? "nobody" : right.minimum().word();
    }

    /** From the least to the most; the lent laptop last, since it changes what the laptop may. */
    @Test
    void each_route_serves_who_may_and_refuses_all_others_without_a_change() throws Exception {
        Map<String, Visitor> who = new LinkedHashMap<>();
        Map<String, Role> roles = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            who.put(role.word(), house.joined(role.word()));
            roles.put(role.word(), role);
        }
        House.lan().ifPresent(address -> who.put("nobody", house.nobody()));
        List<String> wrong = new ArrayList<>();
        refusals(who, roles, wrong);
        assertEquals(204, house.laptop.form("/laptop/lend", Map.of()).statusCode());
        who.clear();
        who.put("laptop, lent", house.laptop);
        roles.put("laptop, lent", Role.CAPTAIN);
        refusals(who, roles, wrong);
        assertEquals(
                204, house.laptop.form("/laptop/back", Map.of("pin", Demo.PIN)).statusCode());
        who.put("laptop", house.laptop);
        roles.put("laptop", Role.COACH);
        who.remove("laptop, lent");
        refusals(who, roles, wrong);
        assertEquals(List.of(), wrong);
    }

    /** Posts that are allowed are for the tests of their pages; here they would change what the others are asked about. */
    private void refusals(Map<String, Visitor> who, Map<String, Role> roles, List<String> wrong) throws Exception {
        for (Map.Entry<String, Visitor> one : who.entrySet()) {
            Optional<Role> role = Optional.ofNullable(roles.get(one.getKey()));
            for (Routes.Right right : house.rights()) {
                boolean may = right.minimum() == null
                        || role.filter(r -> r.covers(right.minimum())).isPresent();
                String before = house.head();
                if (!may || (right.method().equals("GET") && isLeast(one.getKey(), right))) {
                    HttpResponse<String> answer = ask(one.getValue(), right);
                    check(one.getKey(), right, may, role.isEmpty() ? 401 : 403, answer, wrong);
                    if (!before.equals(house.head())) {
                        wrong.add(one.getKey() + " changed something at " + right.method() + " " + right.path());
                    }
                }
            }
        }
    }

    /** Who has more rights sees the same: for those it is enough to look at one. */
    private static boolean isLeast(String who, Routes.Right right) {
        return who.equals("laptop")
                || right.minimum() == null
                || right.minimum().word().equals(who);
    }

    private static void check(
            String who, Routes.Right right, boolean may, int refused, HttpResponse<String> answer, List<String> wrong) {
        boolean fits = may
                ? answer.statusCode() < 500 && answer.statusCode() != 401 && answer.statusCode() != 403
                : answer.statusCode() == refused && !answer.body().contains("<form");
        if (!fits) {
            wrong.add(who + " got " + answer.statusCode() + " at " + right.method() + " " + right.path() + " "
                    + (may ? "and may" : "and may not"));
        }
    }

    private HttpResponse<String> ask(Visitor who, Routes.Right right) throws Exception {
        String path = house.filled(right);
        return right.method().equals("GET") ? who.get(path) : who.form(path, Map.of());
    }

    @Test
    void a_tap_is_taken_from_its_role_on_and_a_form_never_comes_as_a_tap() throws Exception {
        for (Role role : Role.values()) {
            Visitor who = !role.covers(Role.HELPER) ? null : house.joined(role.word());
            for (Map.Entry<String, Role> tap : TapTable.rights().entrySet()) {
                if (who != null) {
                    assertEquals(
                            !role.covers(tap.getValue()),
                            isForbidden(who, tap.getKey()),
                            tap.getKey() + " of a " + role.word());
                }
            }
            for (String form : List.of("attempt.sign", "attempt.close", "device.join", "laptop.lend", "clock.jumped")) {
                assertTrue(who == null || isForbidden(who, form), form + " of a " + role.word());
            }
        }
        for (String role : List.of("viewer", "spectator")) {
            assertEquals(403, house.joined(role).post("/taps", "{\"taps\":[]}").statusCode(), role);
        }
    }

    private static boolean isForbidden(Visitor who, String kind) throws Exception {
        return who.tap(kind, Json.MAPPER.createObjectNode())
                .path("reason")
                .asText()
                .contains("may not send");
    }

    @Test
    void who_has_not_joined_is_shown_how_to() throws Exception {
        HttpResponse<String> page = house.nobody().get("/");
        assertEquals(401, page.statusCode());
        assertTrue(page.body().contains("Scan the join code"), page.body());
        assertTrue(page.body().contains("type the code that stands there"), page.body());
        assertFalse(page.body().contains("Curlew"), "nothing of the day is told");
    }
}
