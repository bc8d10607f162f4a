package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.skeinday.App;
import org.skeinday.CodeOfDay;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;

/** What a person sees of entries that wait, of a device that changes hands, of tabs that are hidden. */
@Timeout(120)
class OutboxBrowserIT {
    private final ChromeDriver phone = Browsers.of(Browsers.Size.PHONE);

    @TempDir
    Path root;

    @BeforeEach
    void forget() {
        phone.manage().deleteAllCookies();
    }

    private static String at(App app, String path) {
        return "http://localhost:" + app.port() + path;
    }

    private App again(int port) throws Exception {
        return App.start(
                new App.Settings(root.resolve("day"), port, false, Pace.normal().dividedBy(20)),
                Clock.systemDefaultZone(),
                new SecureRandom());
    }

    private static void waitFor(ChromeDriver browser, String selector, String words) {
        Sight.waitFor(browser, selector, words);
    }

    private static void press(ChromeDriver browser, String words) {
        Hand.press(browser, words);
    }

    private Object run(String script, Object... arguments) {
        return phone.executeAsyncScript(
                "const done = arguments[arguments.length - 1]; import('/static/js/page.js').then(async (o) => { "
                        + script + " })",
                arguments);
    }

    private void addLanding(String attempt, int slot) {
        run("done(await o.addTap('watch.landing', {attempt: arguments[0], slot: arguments[1], ms: 61210}));"
                .replace("arguments[0]", "'" + attempt + "'")
                .replace("arguments[1]", String.valueOf(slot)));
    }

    @Test
    void entries_that_wait_are_shown_saved_to_a_file_and_taken_in_on_the_laptop_once() throws Exception {
        App app = Demo.start(root.resolve("day"));
        int port = app.port();
        String attempt = CalledForTests.call(new Visitor(port, "", 1));
        phone.get(at(app, "/timing"));
        waitFor(phone, "#timing", "watch 1");
        app.close();
        addLanding(attempt, 1);
        waitFor(phone, "#connection", "Not connected – 1 entry waiting to be sent");
        press(phone, "Show them");
        waitFor(phone, "#entries", "Landing after 1:01.2, watch 1");
        Sight.look(phone, "entries-wait");
        Path file = root.resolve("entries.json");
        Files.writeString(file, (String) run("done(await o.asText());"));
        run("for (const tap of await o.kept()) await o.dismiss(tap.id); done();"); // the phone is lost
        try (App back = again(port)) {
            ChromeDriver laptop = Browsers.of(Browsers.Size.LAPTOP);
            laptop.get(at(back, "/devices"));
            for (int times = 1; times <= 2; times++) {
                Hand.type(laptop, By.id("entries-file"), file.toString());
                waitFor(laptop, "#entries-taken", "1 of 1 entries are saved.");
                laptop.executeScript("document.getElementById('entries-taken').textContent = ''");
            }
            Files.writeString(file, "{}");
            Hand.type(laptop, By.id("entries-file"), file.toString());
            waitFor(laptop, "#entries-taken", "This is no file of entries");
            assertTrue(new Visitor(port, "", 2).get("/now").body().contains("1: 1:01.21"));
        }
        long readings = Files.readAllLines(root.resolve("day/journal.jsonl")).stream()
                .filter(line -> line.contains("attempt.reading"))
                .count();
        assertEquals(1, readings);
    }

    @Test
    void what_is_refused_stays_on_the_device_until_somebody_has_looked() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            String attempt = CalledForTests.call(new Visitor(app.port(), "", 1));
            phone.get(at(app, "/timing"));
            addLanding(attempt, 3);
            waitFor(phone, "#connection", "1 entry needs a look");
            phone.navigate().refresh();
            waitFor(phone, "#connection", "1 entry needs a look");
            press(phone, "Show them");
            waitFor(phone, "#entries", "needs a look: This device is not watch 3");
            Sight.look(phone, "entries-look");
            press(phone, "Delete this entry");
            press(phone, "Told the captain? Press again to delete");
            new WebDriverWait(phone, Duration.ofSeconds(5))
                    .until(b -> !b.findElement(By.id("connection-line")).isDisplayed());
        }
    }

    @Test
    void another_person_takes_the_device_over_and_its_watch_stays_its_own() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            phone.get(app.joinLink().replaceFirst("http://[^/]*", "http://localhost:" + app.port()));
            new Select(phone.findElement(By.id("person"))).selectByVisibleText("Mattis");
            Sight.typeCode(phone, CodeOfDay.handedOut(app.port()));
            press(phone, "Timekeeper");
            waitFor(phone, ".bar .who", "Mattis · timekeeper");
            CalledForTests.callOnly(laptop);
            waitFor(phone, "#timing", "Which watch are you?");
            press(phone, "Watch 1");
            waitFor(phone, "#timing", "watch 1");
            phone.get(at(app, "/join"));
            waitFor(phone, "#join", "Who uses this device now?");
            Sight.look(phone, "join-again");
            new Select(phone.findElement(By.id("person"))).selectByVisibleText("Oda");
            Sight.typeCode(phone, CodeOfDay.handedOut(app.port())); // the coach's yes was to Mattis
            press(phone, "Timekeeper");
            waitFor(phone, ".bar .who", "Oda · timekeeper");
            waitFor(phone, "#timing", "watch 1");
            assertEquals(1, laptop.get("/devices").body().split("/end\"", -1).length - 1, "it is the same device");
        }
    }

    @Test
    void leaving_with_entries_unsent_is_asked_about_and_without_them_not() throws Exception {
        App app = Demo.start(root.resolve("day"));
        String attempt = CalledForTests.call(new Visitor(app.port(), "", 1));
        phone.get(at(app, "/timing"));
        String leaving = "const e = new Event('beforeunload', { cancelable: true }); window.dispatchEvent(e);"
                + " return e.defaultPrevented;";
        assertEquals(false, phone.executeScript(leaving));
        app.close();
        addLanding(attempt, 1);
        waitFor(phone, "#connection", "1 entry waiting to be sent");
        assertEquals(true, phone.executeScript(leaving));
        run("for (const tap of await o.kept()) await o.dismiss(tap.id); done();");
        assertEquals(false, phone.executeScript(leaving));
    }

    /** What a browser withholds from pages that are neither https nor localhost must not be missed. */
    @Test
    void a_tablet_works_over_plain_http_by_the_laptops_address_and_hears_that_it_was_ended() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            assumeFalse(app.invitation().isAlone(), "this machine has no address but its own");
            Visitor laptop = new Visitor(app.port(), "", 1);
            CalledForTests.callOnly(laptop);
            phone.get(app.joinLink());
            new Select(phone.findElement(By.id("person"))).selectByVisibleText("Mattis");
            Sight.typeCode(phone, CodeOfDay.handedOut(app.port()));
            press(phone, "Timekeeper");
            waitFor(phone, "#timing", "Which watch are you?");
            assertEquals(false, phone.executeScript("return window.isSecureContext"));
            press(phone, "Watch 1");
            waitFor(phone, "#timing", "watch 1");
            Hand.tap(phone, By.cssSelector("[data-watch-target]"));
            waitFor(phone, "[data-watch-kept]", "Saved");
            Matcher id = Pattern.compile("/devices/([^/\"]+)/end")
                    .matcher(laptop.get("/devices").body());
            assertTrue(id.find());
            laptop.form("/devices/" + id.group(1) + "/end", Map.of());
            waitFor(phone, "#connection", "This device was ended: it joins again with a new code");
            Sight.pastDoubleTap(phone);
            Hand.tap(phone, By.cssSelector("[data-watch-target]"));
            waitFor(phone, "#connection", "1 entry waiting to be sent");
            Sight.look(phone, "ended-device");
            laptop.form("/codes/new", Map.of());
            String code = app.joinLink().replaceFirst(".*#", "#");
            phone.get("about:blank");
            phone.get(app.invitation().address() + "/join" + code);
            waitFor(phone, "#connection", "1 entry waiting to be sent");
            Sight.typeCode(phone, CodeOfDay.handedOut(app.port()));
            press(phone, "Timekeeper");
            waitFor(phone, "#connection", "1 entry needs a look");
            Path file = root.resolve("entries.json");
            Files.writeString(file, (String) run("done(await o.asText());"));
            ChromeDriver coach = Browsers.of(Browsers.Size.LAPTOP);
            coach.get(at(app, "/devices"));
            Hand.type(coach, By.id("entries-file"), file.toString());
            waitFor(coach, "#entries-taken", "1 of 1 entries are saved."); // as the ended device's own
        }
    }

    @Test
    void a_hidden_tab_holds_no_stream_and_is_right_when_it_is_seen_again() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            phone.get(at(app, "/"));
            waitFor(phone, "#now", "Call Curlew, attempt 1");
            await(() -> app.openStreams() == 1);
            String first = phone.getWindowHandle();
            phone.switchTo().newWindow(WindowType.TAB);
            await(() -> app.openStreams() == 0);
            CalledForTests.call(laptop);
            phone.close();
            front(first);
            waitFor(phone, "#now", "Start winding");
            await(() -> app.openStreams() == 1);
            phone.get("about:blank");
        }
    }

    @Test
    void ten_tabs_of_one_device_are_all_usable() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            phone.get("about:blank");
            String first = phone.getWindowHandle();
            List<String> tabs = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                phone.switchTo().newWindow(WindowType.TAB);
                phone.get(at(app, "/results"));
                waitFor(phone, "#results", "Curlew");
                tabs.add(phone.getWindowHandle());
            }
            Visitor laptop = new Visitor(app.port(), "", 1);
            CalledForTests.call(laptop);
            for (String tab : tabs) {
                front(tab);
                waitFor(phone, "#results", "called");
                phone.close();
            }
            phone.switchTo().window(first);
        }
    }

    @Test
    void a_choice_and_half_typed_words_survive_what_others_change() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            String attempt = CalledForTests.call(laptop);
            phone.get(at(app, "/"));
            Hand.tap(phone, By.cssSelector(".give-up summary"));
            WebElement reason = phone.findElement(By.id("reason"));
            reason.sendKeys("half a rea");
            CalledForTests.letWind(laptop, attempt);
            laptop.form("/attempt/move", Map.of("attempt", attempt, "to", "winding"));
            waitFor(phone, "#now", "Abandon attempt");
            reason = phone.findElement(By.id("reason"));
            reason.sendKeys("son");
            assertEquals("half a reason", reason.getDomProperty("value"));
            Hand.tap(phone, By.cssSelector("h2")); // the field is left: now the fresh part comes in
            waitFor(phone, "#now", "Released");
            assertEquals("half a reason", phone.findElement(By.id("reason")).getDomProperty("value"));
        }
    }

    @Test
    void a_wall_clock_set_by_an_hour_changes_no_running_watch_and_is_said() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            CalledForTests.call(new Visitor(app.port(), "", 1));
            phone.get(at(app, "/timing"));
            waitFor(phone, "#timing", "watch 1");
            Hand.tap(phone, By.cssSelector("[data-watch-target]"));
            new WebDriverWait(phone, Duration.ofSeconds(15))
                    .ignoring(StaleElementReferenceException.class)
                    .until(b -> !b.findElement(By.cssSelector("[data-watch-clock]"))
                            .getText()
                            .startsWith("0:00"));
            phone.executeScript("const now = Date.now.bind(Date); Date.now = () => now() + 3600000;");
            Hand.tap(phone, By.cssSelector("[data-watch-target]"));
            waitFor(phone, "[data-watch-words]", "the clock jumped");
            assertFalse(Sight.words(phone, "[data-watch-clock]").contains("60:"));
            waitFor(phone, "[data-watch-kept]", "Saved");
        }
    }

    @Test
    void the_servers_clock_is_taken_from_the_fastest_exchange_and_forgotten_when_it_was_set() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            phone.get(at(app, "/join")); // no part to refresh: nothing else learns here
            @SuppressWarnings("unchecked")
            List<Number> known = (List<Number>) phone.executeAsyncScript("""
                    const done = arguments[arguments.length - 1];
                    import('/static/js/page.js').then((c) => {
                      const t = performance.timeOrigin + performance.now();
                      const off = () => Math.round(c.serverNow() - performance.timeOrigin - performance.now());
                      const told = [];
                      c.learn(t, t + 5300, t + 5300, t + 400);   // slow: offset 5100, bound 200
                      told.push(off(), c.serverBound());
                      c.learn(t, t + 5010, t + 5010, t + 20);    // fast: offset 5000, bound 10
                      told.push(off(), c.serverBound());
                      c.learn(t, t + 5250, t + 5250, t + 300);   // slow again, and no contradiction
                      told.push(off(), c.serverBound());
                      c.learn(t, t + 3605020, t + 3605020, t + 40); // the laptop's clock was set by an hour
                      told.push(off(), c.serverBound());
                      done(told);
                    });
                    """);
            assertEquals(
                    List.of(5100L, 201L, 5000L, 11L, 5000L, 11L, 3_605_000L, 21L),
                    known.stream().map(n -> Math.round(n.doubleValue())).toList());
        }
    }

    private String watchReady(App app) throws Exception {
        String attempt = CalledForTests.call(new Visitor(app.port(), "", 1));
        phone.get(at(app, "/timing"));
        waitFor(phone, "#timing", "watch 1");
        return attempt;
    }

    private void tapTarget() {
        Hand.tap(phone, By.id("watch-target"));
    }

    private long landings() throws Exception {
        return Files.readAllLines(root.resolve("day/journal.jsonl")).stream()
                .filter(line -> line.contains("attempt.reading"))
                .count();
    }

    @Test
    void a_browser_that_drops_its_database_loses_no_tap() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            watchReady(app);
            phone.executeCdpCommand(
                    "Storage.clearDataForOrigin", Map.of("origin", at(app, ""), "storageTypes", "indexeddb"));
            tapTarget();
            waitFor(phone, "[data-watch-kept]", "Saved");
            Sight.pastDoubleTap(phone);
            phone.executeScript("IDBFactory.prototype.open = () => { throw new Error('forbidden'); };"
                    + "IDBDatabase.prototype.transaction = () => { throw new Error('closed'); };");
            String answers =
                    "const real = window.fetch; window.fetch = (to, how) => String(to) === '/taps' && window.away"
                            + " ? Promise.reject(new Error('away')) : real(to, how); window.away = true;";
            phone.executeScript(answers);
            tapTarget();
            waitFor(phone, "#connection", "This device cannot keep entries: write the time down");
            Sight.look(phone, "entries-cannot-keep");
            phone.executeScript("window.away = false;");
            waitFor(phone, "[data-watch-kept]", "Saved");
            assertEquals(1, landings());
        }
    }

    @Test
    void the_keyboard_times_a_flight_whatever_comes_in_meanwhile() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            watchReady(app);
            phone.executeScript("document.getElementById('watch-target').focus();");
            phone.switchTo().activeElement().sendKeys(" ");
            waitFor(phone, "[data-watch-kept]", "Saved");
            new Visitor(app.port(), "", 5).form("/units", Map.of("units", "inch"));
            Sight.pastDoubleTap(phone);
            assertEquals("watch-target", phone.switchTo().activeElement().getDomAttribute("id"));
            phone.switchTo().activeElement().sendKeys(" ");
            waitFor(phone, "[data-watch-words]", "down");
            waitFor(phone, ".reading", "Saved: 0:");
            assertEquals(1, landings());
        }
    }

    @Test
    void saved_is_said_only_when_nothing_of_this_watch_waits() throws Exception {
        App app = Demo.start(root.resolve("day"));
        int port = app.port();
        watchReady(app);
        tapTarget();
        waitFor(phone, "[data-watch-kept]", "Saved");
        app.close();
        Sight.pastDoubleTap(phone);
        tapTarget();
        waitFor(phone, "[data-watch-kept]", "on this tablet");
        waitFor(phone, "#connection", "1 entry waiting");
        assertEquals(
                "on this tablet",
                phone.findElement(By.cssSelector("[data-watch-kept]")).getText());
        phone.executeScript(
                "window.fetch = () => Promise.reject(new Error('away'));"); // it is another page that sends it
        try (App back = again(port)) {
            phone.get(at(back, "/results"));
            waitFor(phone, "#results", "landed");
            phone.get(at(back, "/timing"));
            waitFor(phone, "[data-watch-kept]", "Saved");
            assertEquals(1, landings());
        }
    }

    @Test
    void two_tabs_of_a_device_send_the_same_taps_and_agree_that_none_waits() throws Exception {
        App app = Demo.start(root.resolve("day"));
        int port = app.port();
        String attempt = watchReady(app);
        String first = phone.getWindowHandle();
        phone.switchTo().newWindow(WindowType.TAB);
        phone.get(at(app, "/timing"));
        waitFor(phone, "#timing", "watch 1");
        app.close();
        run("for (let i = 0; i < 60; i++) await o.addTap('watch.landing', {attempt: '" + attempt
                + "', slot: 1, ms: 1000 + i}); done();");
        waitFor(phone, "#connection", "60 entries waiting");
        front(first);
        waitFor(phone, "#connection", "60 entries waiting");
        try (App back = again(port)) {
            run("o.flush(); done();");
            for (String tab : List.copyOf(phone.getWindowHandles())) {
                front(tab);
                new WebDriverWait(phone, Duration.ofSeconds(40))
                        .ignoring(StaleElementReferenceException.class)
                        .until(b -> !b.findElement(By.id("connection-line")).isDisplayed());
            }
            assertEquals(60, landings());
            assertTrue(new Visitor(back.port(), "", 3).get("/now").statusCode() == 200);
        } finally {
            phone.close();
            phone.switchTo().window(phone.getWindowHandles().iterator().next());
        }
    }

    @Test
    void a_part_whose_refetch_was_lost_or_hangs_is_asked_for_again() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            Visitor laptop = new Visitor(app.port(), "", 1);
            phone.get(at(app, "/"));
            phone.executeScript("""
                    const real = window.fetch; window.lost = 0;
                    window.fetch = (to, how) => {
                      if (String(to) !== '/now' || window.lost > 1) return real(to, how);
                      window.lost++;
                      if (window.lost === 1) return Promise.reject(new Error('lost'));
                      return new Promise((done, fail) => how.signal.addEventListener('abort', () => fail(how.signal.reason)));
                    };""");
            CalledForTests.call(laptop);
            waitFor(phone, "#now", "Start winding");
            assertEquals(2L, phone.executeScript("return window.lost"));
            new WebDriverWait(phone, Duration.ofSeconds(10))
                    .until(b -> !b.findElement(By.id("connection-line")).isDisplayed());
        }
    }

    @Test
    void a_request_that_hangs_is_given_up_and_the_taps_sent_again() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            watchReady(app);
            phone.executeScript("""
                    const real = window.fetch; window.hung = 0;
                    window.fetch = (to, how) => String(to) !== '/taps' || window.hung++ > 0 ? real(to, how)
                      : new Promise((done, fail) => how.signal.addEventListener('abort', () => fail(how.signal.reason)));""");
            tapTarget();
            waitFor(phone, "[data-watch-kept]", "on this tablet");
            waitFor(phone, "[data-watch-kept]", "Saved");
        }
    }

    @Test
    void a_database_that_is_slow_while_the_next_try_is_due_keeps_no_tap_waiting() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            String attempt = watchReady(app);
            phone.executeScript("""
                    const real = window.fetch; window.lost = 0; let held = null;
                    indexedDB.open('skeinday').onsuccess = (event) => { held = event.target.result; };
                    const hold = (until) => {
                      const taps = held.transaction('taps', 'readwrite').objectStore('taps');
                      const look = () => { if (performance.now() < until) taps.count().onsuccess = look; };
                      look();
                    };
                    window.fetch = (to, how) => {
                      if (String(to) !== '/taps' || window.lost > 0) return real(to, how);
                      window.lost++;
                      hold(performance.now() + 600);
                      return Promise.reject(new Error('away'));
                    };""");
            addLanding(attempt, 1);
            waitFor(phone, "#connection", "1 entry waiting");
            new WebDriverWait(phone, Duration.ofSeconds(10))
                    .until(b -> b.findElement(By.id("connection")).getText().isEmpty());
            assertEquals(1, landings());
            assertEquals(1L, phone.executeScript("return window.lost"));
        }
    }

    @Test
    void a_page_that_goes_sends_what_waits_on_its_way_out() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            String attempt = watchReady(app);
            phone.executeScript("const real = window.fetch; window.fetch = (to, how) => how?.keepalive ? real(to, how)"
                    + " : Promise.reject(new Error('away'));");
            for (int i = 0; i < 3; i++) {
                addLanding(attempt, 1);
            }
            waitFor(phone, "#connection", "3 entries waiting");
            assertEquals(0, landings());
            phone.executeScript(
                    "window.dispatchEvent(new Event('pagehide'));"); // a driver ends no page as a finger does
            org.skeinday.Await.until(Duration.ofSeconds(10), () -> {
                try {
                    return landings() == 3;
                } catch (Exception e) {
                    return false;
                }
            });
        }
    }

    @Test
    void the_other_mouse_button_starts_no_watch() throws Exception {
        try (App app = Demo.start(root.resolve("day"))) {
            watchReady(app);
            phone.executeScript("document.getElementById('watch-target').dispatchEvent(new PointerEvent('pointerdown',"
                    + " {button: 2, isPrimary: true, bubbles: true}));");
            assertEquals(
                    "ready", phone.findElement(By.cssSelector("[data-watch]")).getDomAttribute("data-state"));
            tapTarget();
            waitFor(phone, "[data-watch-words]", "in the air");
        }
    }

    @Test
    void the_servers_clock_set_by_an_hour_moves_what_counts_by_it_and_no_watch() throws Exception {
        var wall = new SteppedClock(Clock.systemDefaultZone());
        try (App app = App.start(
                new App.Settings(
                        Demo.into(root.resolve("day")), 0, false, Pace.normal().dividedBy(20)),
                wall,
                new SecureRandom())) {
            watchReady(app);
            tapTarget();
            waitFor(phone, "[data-watch-kept]", "Saved");
            String offset = "const c = await import('/static/js/page.js'); done(c.serverNow() - performance.timeOrigin"
                    + " - performance.now());";
            org.skeinday.Await.until(
                    Duration.ofSeconds(10), () -> Math.abs(((Number) run(offset)).doubleValue()) < 1_000);
            wall.stepBy(Duration.ofHours(1));
            org.skeinday.Await.until(
                    Duration.ofSeconds(20), () -> Math.abs(((Number) run(offset)).doubleValue() - 3_600_000) < 1_000);
            Sight.pastDoubleTap(phone); // on a quick machine all of this has taken less, and the tap was swallowed
            tapTarget();
            waitFor(phone, ".reading", "Saved: 0:");
            assertTrue(new Visitor(app.port(), "", 3).get("/now").body().contains("1: 0:"), "not an hour");
        }
    }

    /** Brings a tab into sight, as a person does. */
    private void front(String tab) {
        phone.switchTo().window(tab);
        phone.executeCdpCommand("Page.bringToFront", Map.of());
    }

    private static void await(java.util.function.BooleanSupplier holds) {
        new WebDriverWait(Browsers.of(Browsers.Size.PHONE), Duration.ofSeconds(10)).until(b -> holds.getAsBoolean());
    }
}
