package org.skeinday.device.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.cli.Commands;
import org.skeinday.cli.Skeinday;
import org.skeinday.platform.http.Pace;

/** Which address tablets are told, and what the laptop says when it has another one than they joined at. */
@Timeout(60)
class AddressesTest {
    @TempDir
    Path root;

    private App start(String host, int port) throws Exception {
        Path day = root.resolve("day");
        if (!Files.exists(day)) {
            Demo.into(day);
        }
        var settings = new App.Settings(day, port, false, Pace.normal().dividedBy(20), host);
        return App.start(settings, Clock.systemDefaultZone(), new SecureRandom());
    }

    @Test
    void a_chosen_name_comes_first_and_is_answered_to() throws Exception {
        Addresses named = new Addresses("Hall-Laptop");
        assertEquals("hall-laptop", named.best());
        assertTrue(named.names().contains("hall-laptop"));
        assertEquals(
                new Addresses().forTablets(),
                named.forTablets().subList(1, named.forTablets().size()));
    }

    @Test
    void a_chosen_address_that_this_machine_has_no_more_is_not_told() {
        Addresses gone = new Addresses("203.0.113.77"); // for documentation only, RFC 5737
        assertFalse(gone.names().contains("203.0.113.77"));
        assertEquals(new Addresses().best(), gone.best());
    }

    @Test
    void every_address_that_is_told_is_private_first_and_answered_to() {
        Addresses own = new Addresses();
        List<String> told = own.forTablets();
        assertTrue(own.names().containsAll(told), told.toString());
        for (String address : told) {
            assertFalse(address.startsWith("127.") || address.startsWith("169.254."), address);
        }
    }

    @Test
    void the_code_stays_the_same_over_restarts() throws Exception {
        String link;
        int port;
        try (App app = start("hall-laptop", 0)) {
            link = app.joinLink();
            port = app.port();
            assertTrue(link.matches("http://hall-laptop:\\d+/join#[0-9a-f]{32}"), link);
        }
        try (App again = start("hall-laptop", port)) {
            assertEquals(link, again.joinLink());
        }
    }

    @Test
    void a_laptop_that_has_moved_says_where_from_and_what_to_do() throws Exception {
        String lan = new Addresses().best();
        Assumptions.assumeFalse(lan.equals("localhost"), "This machine has no address beside its own loopback");
        try (App app = start("", 0)) {
            Visitor laptop = new Visitor(app.port(), "", 290);
            assertTrue(laptop.get("/join/help").body().contains("heard from no other device"));
            assertFalse(laptop.get("/join").body().contains("has another address now"));
            String token = app.joinLink().replaceFirst(".*#", "");
            var joined = Visitor.from(lan, app.port(), "", 291)
                    .form("/join", Map.of("token", token, "role", "helper", "person", ""));
            assertEquals(204, joined.statusCode(), joined.body());
            assertFalse(laptop.get("/join").body().contains("has another address now"), "tablets find it");
            assertTrue(laptop.get("/join").body().contains("http://" + lan + ":" + app.port() + "/join#"));
        }
        Files.writeString(root.resolve("day/joined-at"), "http://203.0.113.77:8420");
        try (App app = start("", 0)) {
            Visitor laptop = new Visitor(app.port(), "", 292);
            for (String page : List.of("/join", "/join/help")) {
                String body = laptop.get(page).body();
                for (String words : List.of(
                        "Devices joined at <b>http://203.0.113.77:8420</b>; it is <b>"
                                + app.invitation().address() + "</b> now",
                        "give the laptop its old address back",
                        "Save them to a file",
                        "each entry counts once")) {
                    assertTrue(body.contains(words), words + " in " + body);
                }
            }
        }
    }

    @Test
    void a_tablet_that_cannot_join_is_helped_on_the_laptop_and_looks_at_itself() throws Exception {
        try (App app = start("", 0)) {
            String help = new Visitor(app.port(), "", 293).get("/join/help").body();
            for (String words : List.of(
                    "client isolation",
                    "firewall",
                    "asks to sign in",
                    "Print this page",
                    app.invitation().address() + "/hello",
                    "--host")) {
                assertTrue(help.contains(words), words + " in " + help);
            }
            String lan = new Addresses().best();
            if (!lan.equals("localhost")) {
                var hello = Visitor.from(lan, app.port(), "", 294).get("/hello");
                assertEquals(200, hello.statusCode(), "before it has joined");
                assertTrue(hello.body().contains("This device reaches the laptop"), hello.body());
                assertFalse(hello.body().contains("Curlew"));
            }
        }
    }

    @Test
    void what_is_no_address_is_refused_by_the_command() {
        for (String wrong : List.of("http://a", "a:80", "a b", "-x", "")) {
            var out = new StringWriter();
            int code = Skeinday.run(
                    new String[] {"serve", "--data", root.resolve("none").toString(), "--port", "0", "--host=" + wrong},
                    new PrintWriter(out),
                    new PrintWriter(out),
                    Commands.all());
            assertEquals(2, code, out.toString());
            assertTrue(out.toString().contains("without port, for example 192.168.1.5"), out.toString());
        }
    }
}
