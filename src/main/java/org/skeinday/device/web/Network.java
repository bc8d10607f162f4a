package org.skeinday.device.web;

import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** How tablets reach the laptop, whether any did, and what has changed since they joined. */
public final class Network {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final int MOST_HEARD = 1_000;

    private final Places places;
    private final Clock clock;
    private final Set<String> heard = ConcurrentHashMap.newKeySet();
    private volatile long lastMs;

    /** Where addresses are known and kept. */
    public interface Places {
        /** For the code, for example {@code http://192.168.1.5:8420}. */
        String address();

        /** All that a tablet could try, the one of the code first. */
        List<String> all();

        /** Whether this address of a request is one of this machine's own. */
        boolean isOwn(String address);

        /** Where a device joined last, as {@link #address}; empty when none did. */
        Optional<String> joined();

        /** Keeps where a device joined. */
        void keepJoined(String address);
    }

    public Network(Places places, Clock clock) {
        this.places = places;
        this.clock = clock;
    }

    /** Another machine has asked for something. @param from its address */
    public void heard(String from) {
        if (!places.isOwn(from) && (heard.contains(from) || heard.size() < MOST_HEARD)) {
            heard.add(from);
            lastMs = clock.millis();
        }
    }

    /** A device has joined. @param host name and port by which it asked */
    void joinedAt(String host) {
        if (!host.startsWith("localhost") && !host.startsWith("127.") && !host.startsWith("[")) {
            places.keepJoined("http://" + host);
        }
    }

    NetworkView view() {
        return new NetworkView(places.address(), places.all(), movedFrom(), heardWords());
    }

    /** Empty while tablets find the laptop where they joined. */
    private String movedFrom() {
        return places.joined().filter(before -> !places.all().contains(before)).orElse("");
    }

    private String heardWords() {
        if (heard.isEmpty()) {
            return "Since its start this laptop has heard from no other device.";
        }
        String time = TIME.format(Instant.ofEpochMilli(lastMs).atZone(clock.getZone()));
        return "Since its start this laptop has heard from " + heard.size()
                + (heard.size() == 1 ? " other device" : " other devices") + ", last at " + time + ".";
    }
}
