package org.skeinday.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.CodeOfDay;
import org.skeinday.Demo;
import org.skeinday.Visitor;

/** How far a yes and a link reach: to one person, and to a few devices. */
@Timeout(60)
class JoinLimitsWebTest {
    @TempDir
    Path root;

    private App app;
    private long seeds = 9_500;

    @BeforeEach
    void start() throws Exception {
        app = Demo.start(root.resolve("day"));
    }

    @AfterEach
    void stop() throws Exception {
        app.close();
    }

    private String link() {
        return app.joinLink().replaceFirst(".*#", "");
    }

    private Visitor device(String cookie) {
        return new Visitor(app.port(), cookie, ++seeds);
    }

    private String meta(String cookie, String name) throws Exception {
        Matcher found = Pattern.compile("name=\"" + name + "\" content=\"([^\"]*)\"")
                .matcher(device(cookie).get("/").body());
        assertTrue(found.find());
        return found.group(1);
    }

    private String who(String cookie) throws Exception {
        return meta(cookie, "who").replaceFirst(".* · ", ""); // the role, without who it is
    }

    private int yes(String cookie, String asked, String person) throws Exception {
        return device("")
                .form("/devices/" + meta(cookie, "device") + "/yes", Map.of("asked", asked, "person", person))
                .statusCode();
    }

    private String joinedAs(String person, String cookie, String code, String role) throws Exception {
        Map<String, String> form = Map.of("token", link(), "code", code, "role", role, "person", person);
        HttpResponse<String> answer = device(cookie).form("/join", form);
        assertEquals(204, answer.statusCode(), answer.body());
        return answer.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
    }

    @Test
    void a_yes_is_to_one_person_and_goes_with_the_device_to_nobody_else() throws Exception {
        String one = app.names().keySet().iterator().next();
        String other = app.names().keySet().stream().skip(1).findFirst().orElseThrow();
        for (String role : new String[] {"timekeeper", "captain"}) {
            String asks = joinedAs(one, "", "", role);
            assertEquals(200, yes(asks, role, one));
            String taken = joinedAs(other, asks, "", role);
            assertEquals("helper", who(taken), "the coach has not seen the other");
            String again = joinedAs(one, taken, "", role);
            assertEquals("helper", who(again), "the yes ended with that");
            assertEquals(200, yes(again, role, one));
            String has = joinedAs(one, again, "", role);
            assertEquals(role, who(has));
            has = joinedAs(one, has, "", role);
            assertEquals(role, who(has), "nothing was changed");
            String handedOn = joinedAs(other, has, "", role);
            assertEquals("helper", who(handedOn));
            assertTrue(device(handedOn).get("/join").body().contains("Asked to be " + role));
            assertEquals(role, who(joinedAs(other, handedOn, CodeOfDay.handedOut(app.port()), role)));
        }
    }

    /** From the network's address: what comes from the laptop's own is never slowed. */
    @Test
    void one_with_the_walls_link_makes_no_devices_without_end_and_a_timekeeper_joins() throws Exception {
        String address = House.lan().orElse("");
        Assumptions.assumeFalse(address.isEmpty(), "This machine has no address beside its own loopback");
        int joined = 0;
        for (int i = 0; i < 150; i++) {
            Map<String, String> form = Map.of("token", link(), "code", "", "role", "viewer", "person", "");
            HttpResponse<String> answer =
                    Visitor.from(address, app.port(), "", ++seeds).form("/join", form);
            joined += answer.statusCode() == 204 ? 1 : 0;
            assertTrue(answer.statusCode() == 204 || answer.body().contains("new devices have joined: wait"));
        }
        assertTrue(joined >= 30 && joined <= 36, "joined " + joined);
        Map<String, String> today =
                Map.of("token", link(), "code", CodeOfDay.handedOut(app.port()), "role", "timekeeper", "person", "");
        assertEquals(
                204,
                Visitor.from(address, app.port(), "", ++seeds)
                        .form("/join", today)
                        .statusCode());
        assertEquals("viewer", who(joinedAs("", "", "", "viewer")), "the laptop's own are never slowed");
    }
}
