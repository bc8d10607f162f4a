package org.skeinday.hall;

import org.locationtech.jts.geom.Coordinate;
import org.skeinday.units.Preconditions;

/**
 * A point on the floor of a winding place, in mm. The origin is under the mount's hook; {@code alongMm} runs towards the
 * winder, behind the mount it is negative; {@code besideMm} is above zero to the left, seen from the mount.
 */
public record Spot(double alongMm, double besideMm) {
    /** Nothing on a hall's floor is further away: 300 m. */
    static final double FURTHEST_MM = 300_000;

    public Spot {
        Preconditions.within("A place along the line in mm", alongMm, -FURTHEST_MM, FURTHEST_MM);
        Preconditions.within("A place beside the line in mm", besideMm, -FURTHEST_MM, FURTHEST_MM);
    }

    public double distanceTo(Spot other) {
        return Math.hypot(other.alongMm - alongMm, other.besideMm - besideMm);
    }

    /** The point so far from here in the direction of {@code degrees}, clockwise from the way mount to winder. */
    public Spot towards(double degrees, double mm) {
        double angle = Math.toRadians(degrees);
        return new Spot(alongMm + mm * Math.cos(angle), besideMm - mm * Math.sin(angle));
    }

    Coordinate coordinate() {
        return new Coordinate(alongMm, besideMm);
    }

    static Spot of(Coordinate c) {
        return new Spot(c.x, c.y);
    }
}
