package org.skeinday.platform.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Role;

/** A few devices with many tabs keep nobody outside. */
class StreamPlacesTest {
    private final Map<String, Long> open = new HashMap<>();

    private boolean opens(String device) {
        StreamPlaces.Answer answer = StreamPlaces.ask(device, open, StreamPlaces.OTHERS);
        answer.gives().ifPresent(other -> open.merge(other, -1L, Long::sum));
        if (answer.admitted()) {
            open.merge(device, 1L, Long::sum);
        }
        return answer.admitted();
    }

    @Test
    void one_device_opens_twenty_and_no_more() {
        for (int i = 0; i < 20; i++) {
            assertTrue(opens("a"));
        }
        assertFalse(opens("a"));
    }

    @Test
    void ten_devices_that_take_all_they_can_leave_a_place_for_each_of_a_hundred_others() {
        for (int i = 0; i < 20 * 10; i++) {
            opens("greedy" + i % 10);
        }
        for (int i = 0; i < 100; i++) {
            assertTrue(opens("phone" + i), "phone " + i);
        }
        assertEquals(
                100,
                open.keySet().stream()
                        .filter(d -> d.startsWith("phone") && open.get(d) == 1L)
                        .count());
        long all = open.values().stream().mapToLong(Long::longValue).sum();
        assertEquals(StreamPlaces.OTHERS, all, "and no more than there are");
    }

    @Test
    void whoever_has_kept_places_stands_in_the_others_only_as_long_as_nobody_asks_for_them() {
        Map<String, Long> kept = new HashMap<>(Map.of("laptop", 0L));
        while (StreamPlaces.ask("laptop", true, kept, open).admitted()) {
            kept.merge("laptop", 1L, Long::sum);
        }
        assertEquals(LiveHub.MOST_STREAMS, kept.get("laptop"));
        for (int i = 0; i < StreamPlaces.OTHERS; i++) {
            StreamPlaces.Answer answer = StreamPlaces.ask("phone" + i, false, kept, open);
            assertTrue(answer.admitted() && answer.gives().orElse("").equals("laptop"), "phone " + i);
            kept.merge("laptop", -1L, Long::sum);
            open.merge("phone" + i, 1L, Long::sum);
        }
        assertFalse(StreamPlaces.ask("one more", false, kept, open).admitted());
        assertEquals(StreamPlaces.KEPT, kept.get("laptop"), "its own are left");
        assertFalse(StreamPlaces.ask("laptop", true, kept, open).admitted());
    }

    @Test
    void a_timekeeper_has_a_place_though_every_other_is_taken() {
        for (int i = 0; i < 150; i++) {
            opens("phone" + i);
        }
        assertFalse(opens("one more"));
        for (Role role : Role.values()) {
            LiveHub.Owner owner = LiveHub.Owner.of(new Caller("late", "", role, false));
            assertEquals(
                    role.covers(Role.TIMEKEEPER),
                    StreamPlaces.ask(
                                    owner.device(),
                                    owner.kind(),
                                    kind -> kind == StreamPlaces.Kind.CREW ? open : Map.of())
                            .admitted(),
                    role.word());
        }
    }

    @Test
    void a_hall_of_spectators_keeps_nobody_of_the_crew_outside() {
        Map<StreamPlaces.Kind, Map<String, Long>> all = new EnumMap<>(StreamPlaces.Kind.class);
        for (StreamPlaces.Kind kind : StreamPlaces.Kind.values()) {
            all.put(kind, new HashMap<>());
        }
        for (int i = 0; i < 300; i++) {
            ask(all, StreamPlaces.Kind.SPECTATOR, "parent" + i);
        }
        assertEquals(
                StreamPlaces.SPECTATORS, all.get(StreamPlaces.Kind.SPECTATOR).size());
        for (int i = 0; i < StreamPlaces.OTHERS; i++) {
            assertTrue(ask(all, StreamPlaces.Kind.CREW, "helper" + i), "helper " + i);
        }
        assertEquals(Map.of(), all.get(StreamPlaces.Kind.SPECTATOR), "they gave all of theirs");
        assertFalse(ask(all, StreamPlaces.Kind.SPECTATOR, "late"), "and take none from the crew");
        assertFalse(ask(all, StreamPlaces.Kind.CREW, "one more"));
        assertTrue(ask(all, StreamPlaces.Kind.KEPT, "timekeeper"));
    }

    private static boolean ask(Map<StreamPlaces.Kind, Map<String, Long>> all, StreamPlaces.Kind kind, String device) {
        StreamPlaces.Answer answer = StreamPlaces.ask(device, kind, all::get);
        answer.gives().ifPresent(other -> all.values().forEach(of -> of.remove(other, 1L)));
        if (answer.admitted()) {
            all.get(kind).merge(device, 1L, Long::sum);
        }
        return answer.admitted();
    }

    @Test
    void two_devices_never_take_a_place_from_each_other_in_turn() {
        for (int i = 0; i < StreamPlaces.OTHERS; i++) {
            assertTrue(opens("phone" + i));
        }
        assertFalse(opens("one more"), "nobody has two");
        assertFalse(opens("phone1"));
    }
}
