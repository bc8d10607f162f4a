package org.skeinday.hall;

import java.util.Locale;
import java.util.Optional;
import org.skeinday.units.Length;
import org.skeinday.units.Preconditions;

/** Another lane, both its ends measured by tape from this one. */
public record OtherLane(String name, Taped mount, Taped winder) {
    public OtherLane {
        Preconditions.filled("The other lane's name", name);
    }

    /** Why its tape numbers cannot be right on this lane; empty when they can. */
    public Optional<String> cannotMeet(Lane lane) {
        return mount.cannotMeet(lane)
                .map(why -> "its mount: " + why)
                .or(() -> winder.cannotMeet(lane).map(why -> "its winder end: " + why))
                .or(() -> tooShort(lane));
    }

    private Optional<String> tooShort(Lane lane) {
        double mm = mount.on(lane).distanceTo(winder.on(lane));
        return mm >= 300
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "its ends are %.0f mm apart by these numbers; a lane is at least 300 mm long",
                        mm));
    }

    /** Hook to hook, as its ends were measured from this lane: to compare with its own tape. */
    public Length length(Lane lane) {
        return Length.ofMillimetres(mount.on(lane).distanceTo(winder.on(lane)));
    }
}
