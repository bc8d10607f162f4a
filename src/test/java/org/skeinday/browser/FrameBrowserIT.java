package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.ServerSocket;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.device.JoinCode;
import org.skeinday.device.web.DevicePages;
import org.skeinday.device.web.JoinCodes;
import org.skeinday.device.web.JoinView;
import org.skeinday.device.web.Network;
import org.skeinday.device.web.PinGate;
import org.skeinday.device.web.Sessions;
import org.skeinday.platform.http.NavItem;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Page;
import org.skeinday.platform.http.Role;
import org.skeinday.platform.http.Server;
import org.skeinday.platform.live.LiveHub;
import org.skeinday.platform.live.LiveRoutes;
import org.skeinday.platform.live.TapRules;
import org.skeinday.platform.record.Act;
import org.skeinday.platform.record.Answer;

@Timeout(60)
class FrameBrowserIT {
    private static final Sessions.Known NOBODY = new Sessions.Known(
            token -> Optional.empty(),
            token -> Optional.empty(),
            number -> Optional.empty(),
            token -> Optional.empty());

    private static final List<NavItem> NAV = List.of(
            new NavItem("Now", "/now", Role.VIEWER),
            new NavItem("Bench", "/bench", Role.HELPER),
            new NavItem("Timing", "/timing", Role.TIMEKEEPER),
            new NavItem("Join", "/join", Role.VIEWER));
    private final Pace pace = Pace.normal().dividedBy(20);
    private final Map<String, Act> acts = new ConcurrentHashMap<>();

    @Test
    void a_tap_made_while_the_server_is_away_is_saved_once_when_it_is_back() throws Exception {
        int port = freePort();
        ChromeDriver browser = Browsers.of(Browsers.Size.PHONE);
        Server first = start(port);
        try {
            browser.get("http://localhost:" + port + "/join");
            Browsers.shot(browser, "join-phone");
        } finally {
            first.close();
        }
        browser.executeAsyncScript("const done = arguments[0]; import('/static/js/page.js')"
                + ".then((o) => o.addTap('watch.release', {attempt: 'a', slot: 1})).then(() => done())");
        waitFor(browser, "Not connected – 1 entry waiting to be sent");
        Browsers.shot(browser, "waiting-phone");
        Server second = start(port);
        try {
            waitFor(browser, "");
            assertEquals(1, acts.size());
        } finally {
            second.close();
        }
    }

    @Test
    void no_page_is_wider_than_its_screen() throws Exception {
        int port = freePort();
        Server server = start(port);
        try {
            for (Browsers.Size size : Browsers.Size.values()) {
                ChromeDriver browser = Browsers.of(size);
                browser.get("http://localhost:" + port + "/join");
                Browsers.shot(browser, "join-" + size);
                Object fits = browser.executeScript(
                        "return document.documentElement.scrollWidth <= document.documentElement.clientWidth");
                assertTrue(Boolean.TRUE.equals(fits), "too wide on " + size);
            }
        } finally {
            server.close();
        }
    }

    private void waitFor(ChromeDriver browser, String words) {
        new WebDriverWait(browser, Duration.ofSeconds(15))
                .withMessage(
                        () -> "\"" + words + "\" expected, \"" + told(browser) + "\" shown, " + acts.size() + " saved")
                .until(b -> told(browser).equals(words));
    }

    private static String told(ChromeDriver browser) {
        return browser.findElement(By.id("connection")).getText();
    }

    private Server start(int port) {
        Page page = new Page(Page.precompiled(), NAV, pace, UnaryOperator.identity());
        DevicePages.Door door = new DevicePages.Door(
                new OneCode(),
                new Network(new Here("http://localhost:" + port), Clock.systemUTC()),
                () -> "cd".repeat(16),
                () -> List.of(new JoinView.Person("p1", "Crew one")),
                List::of,
                device -> {},
                device -> false,
                new PinGate(typed -> typed.equals("2468"), Clock.systemUTC()),
                new Sessions(NOBODY, Clock.systemUTC()),
                () -> false);
        Server.Settings settings = new Server.Settings("127.0.0.1", port, Set::of, () -> "ref", pace);
        return Server.start(settings, token -> Optional.empty(), page, routes -> {
            LiveRoutes.register(
                    routes,
                    new LiveHub(pace, "run"),
                    this::save,
                    Clock.systemUTC(),
                    new TapRules(java.util.Map.of("watch.release", Role.HELPER), id -> Optional.empty()));
            DevicePages.register(routes, page, this::save, Clock.systemUTC(), door);
        });
    }

    /** The same codes all the time. */
    private record OneCode() implements JoinCodes {
        @Override
        public JoinCode link() {
            return new JoinCode("ab".repeat(16));
        }

        @Override
        public String typed() {
            return "K7P4TX";
        }

        @Override
        public Optional<String> ofDay() {
            return Optional.empty();
        }

        @Override
        public void renew(String act) {}

        @Override
        public void handOut(String act) {}
    }

    /** One address, and nothing kept. */
    private record Here(String address) implements Network.Places {
        @Override
        public List<String> all() {
            return List.of(address);
        }

        @Override
        public boolean isOwn(String other) {
            return true;
        }

        @Override
        public Optional<String> joined() {
            return Optional.empty();
        }

        @Override
        public void keepJoined(String other) {}
    }

    private Answer save(Act act) {
        acts.putIfAbsent(act.id(), act);
        return new Answer.Saved(acts.size(), act.id());
    }

    private static int freePort() throws Exception {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }
}
