package org.skeinday.access;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.skeinday.App;
import org.skeinday.Demo;
import org.skeinday.Visitor;
import org.skeinday.device.JoinCode;
import org.skeinday.device.SpectatorPass;
import org.skeinday.fault.CalledForTests;
import org.skeinday.platform.http.Pace;
import org.skeinday.platform.http.Routes;
import org.skeinday.platform.record.Json;

/** A populated day with one of each who may ask, and what stands in its record. */
final class House implements AutoCloseable {
    final App app;
    final Path folder;
    final Visitor laptop;
    final String attempt;
    private long seeds = 2600;
    private final Map<String, String> ids = new LinkedHashMap<>();

    /** The demo with its first attempt called and a watch taken by the laptop. */
    House(Path folder) throws Exception {
        this(folder, Pace.normal().dividedBy(20));
    }

    /** The same with waits as they are named. */
    House(Path folder, Pace pace) throws Exception {
        this(folder, pace, true, Staged.CALLED);
    }

    /** The demo with its first attempt brought so far, and a device that asks to be captain. */
    static House at(Path folder, Staged stage) throws Exception {
        var house = new House(folder, Pace.normal().dividedBy(20), true, stage);
        String token = house.app.joinLink().replaceFirst(".*#", "");
        Map<String, String> asks = Map.of("token", token, "code", "", "role", "captain", "person", "");
        new Visitor(house.app.port(), "", 2_599).form("/join", asks);
        return house;
    }

    /** A day that is in the folder already. */
    static House asItIs(Path folder) throws Exception {
        return new House(folder, Pace.normal().dividedBy(20), false, Staged.CALLED);
    }

    private House(Path folder, Pace pace, boolean demo, Staged stage) throws Exception {
        this.folder = folder;
        var settings = new App.Settings(demo ? Demo.into(folder) : folder, 0, false, pace);
        this.app = App.start(settings, Clock.systemDefaultZone(), new SecureRandom());
        this.laptop = new Visitor(app.port(), "", 260);
        this.attempt = stage.reach(laptop);
        find();
    }

    private void find() throws Exception {
        String now = laptop.get("/now").body();
        ids.put("id", attempt);
        ids.put("attempt", attempt);
        ids.put("entry", CalledForTests.value(now, "name=\"entry\" value=\"([^\"]+)\""));
        ids.put("motor", CalledForTests.value(laptop.get("/bench").body(), "/bench/motor/([^\"/]+)"));
        ids.put(
                "batch",
                CalledForTests.value(
                        laptop.get("/bench/motor/" + ids.get("motor")).body(), "/bench/break-test/([^\"/?]+)"));
        ids.put("kind", "motors");
        ids.put("list", CalledForTests.value(laptop.get("/checks/lists").body(), "/checks/lists/([^\"/]+)"));
        ids.put("path", "css/skeinday.css");
        ids.put("code", spectatorsCode());
    }

    /** What stands at the end of the spectators' address. */
    String spectatorsCode() {
        return SpectatorPass.codeOf(new JoinCode(app.joinLink().replaceFirst(".*#", "")));
    }

    /** Who came in by the spectators' address. */
    Visitor spectator() {
        String pass = new SpectatorPass(spectatorsCode(), String.format("%016x", ++seeds)).text();
        return new Visitor(app.port(), "skeinday=" + pass, seeds);
    }

    /** A device that has joined in this role; a spectator has joined nothing. */
    Visitor joined(String role) throws IOException, InterruptedException {
        if (role.equals("spectator")) {
            return spectator();
        }
        return Demo.joined(app, role, role.equals("coach") ? Demo.PIN : "", ++seeds);
    }

    /** Somebody on the network who has not joined; without a network of this machine the test is left out. */
    Visitor nobody() {
        Optional<String> address = lan();
        Assumptions.assumeTrue(address.isPresent(), "This machine has no address beside its own loopback");
        return Visitor.from(address.orElseThrow(), app.port(), "", 261);
    }

    /** The first address of this machine that others could use. */
    static Optional<String> lan() {
        try {
            return NetworkInterface.networkInterfaces()
                    .flatMap(NetworkInterface::inetAddresses)
                    .filter(a -> a instanceof Inet4Address && !a.isLoopbackAddress())
                    .map(InetAddress::getHostAddress)
                    .findFirst();
        } catch (SocketException e) {
            return Optional.empty();
        }
    }

    /** A path with ids that are there in place of its parameters. */
    String filled(Routes.Right right) {
        String path = right.path();
        for (Map.Entry<String, String> id : ids.entrySet()) {
            path = path.replace("{" + id.getKey() + "}", id.getValue()).replace("<" + id.getKey() + ">", id.getValue());
        }
        if (Pattern.compile("[{<]").matcher(path).find()) {
            throw new AssertionError("No example of what stands in " + path + ": add one to House.find");
        }
        return path;
    }

    List<Routes.Right> rights() {
        return app.rights();
    }

    /** Number and hash of the last record. */
    String head() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("journal.jsonl"), StandardCharsets.UTF_8);
        var last = Json.MAPPER.readTree(lines.get(lines.size() - 1));
        return last.path("n").asText() + " " + last.path("hash").asText() + " "
                + Files.readString(folder.resolve("people.json"), StandardCharsets.UTF_8)
                        .hashCode();
    }

    @Override
    public void close() throws IOException {
        app.close();
    }
}
