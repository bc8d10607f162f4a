package org.skeinday.hall;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * One shape of a {@link Drawing}, in its coordinates: mm, x along the lane, y downwards.
 *
 * @param at corners of an area, points of a line, the middle of a dot
 * @param radius of a dot in mm, else 0
 * @param broken whether something is too close here: an area is hatched then
 */
public record Shape(Form form, Role role, List<Spot> at, double radius, boolean broken) {
    /** An area is a polygon, a line a polyline, a dot a circle. */
    public enum Form {
        AREA,
        LINE,
        DOT
    }

    public enum Role {
        MODEL_REACH,
        PEOPLE_REACH,
        END_ZONE,
        OTHER_ZONE,
        LANE,
        MOUNT,
        WINDER,
        OTHER_LANE,
        STAND,
        PERSON,
        READER,
        FAN,
        LAUNCH,
        DRIFT,
        SCALE;

        /** For a class attribute. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public Shape {
        at = List.copyOf(at);
    }

    /** As the attribute {@code points} has them, whole mm. */
    public String points() {
        return at.stream()
                .map(p -> Drawing.whole(p.alongMm()) + "," + Drawing.whole(p.besideMm()))
                .collect(Collectors.joining(" "));
    }

    /** Middle of a dot, whole mm. */
    public String cx() {
        return Drawing.whole(at.get(0).alongMm());
    }

    public String cy() {
        return Drawing.whole(at.get(0).besideMm());
    }

    public String r() {
        return Drawing.whole(radius);
    }
}
