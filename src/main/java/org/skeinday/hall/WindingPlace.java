package org.skeinday.hall;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.skeinday.units.Length;

/**
 * One winding place as measured: its lane and what stands around it.
 *
 * @param placed model stands and people; each name once
 * @param others other lanes near by; each name once
 * @param pastWinder free floor past the winder end, up to a wall or rope; null when nobody measured
 * @param air how the air drifts over the floor; null when nobody looked
 * @param launch where models are released; null when not set
 */
public record WindingPlace(
        Lane lane,
        List<Placed> placed,
        List<OtherLane> others,
        @Nullable Length pastWinder,
        @Nullable Air air,
        List<Fan> fans,
        @Nullable Taped launch) {
    public WindingPlace {
        placed = List.copyOf(placed);
        others = List.copyOf(others);
        fans = List.copyOf(fans);
        Set<String> names = new HashSet<>();
        Stream.of(
                        placed.stream().map(Placed::name),
                        others.stream().map(OtherLane::name),
                        fans.stream().map(Fan::name),
                        Stream.of(lane.name()))
                .flatMap(s -> s)
                .forEach(name -> once(names, name));
    }

    private static void once(Set<String> names, String name) {
        if (!names.add(name)) {
            throw new IllegalArgumentException(
                    "Each name must stand once at a winding place, but '" + name + "' stands there twice");
        }
    }

    /** A lane with nothing around it. */
    public static WindingPlace of(Lane lane) {
        return new WindingPlace(lane, List.of(), List.of(), null, null, List.of(), null);
    }

    public WindingPlace with(Placed... these) {
        return new WindingPlace(
                lane, Stream.concat(placed.stream(), Stream.of(these)).toList(), others, pastWinder, air, fans, launch);
    }

    public WindingPlace beside(OtherLane... these) {
        return new WindingPlace(
                lane, placed, Stream.concat(others.stream(), Stream.of(these)).toList(), pastWinder, air, fans, launch);
    }

    public WindingPlace withRoomPastWinder(Length room) {
        return new WindingPlace(lane, placed, others, room, air, fans, launch);
    }

    public WindingPlace withAir(@Nullable Air drift, List<Fan> blowing, @Nullable Taped launchSpot) {
        return new WindingPlace(lane, placed, others, pastWinder, drift, blowing, launchSpot);
    }
}
