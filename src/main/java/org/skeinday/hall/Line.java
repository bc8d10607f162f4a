package org.skeinday.hall;

import org.locationtech.jts.geom.LineSegment;

/** A stretched motor's line from mount to winder end, anywhere on the floor; it has a length. */
record Line(Spot mount, Spot winder) {
    static Line of(Lane lane) {
        return new Line(lane.mountEnd(), lane.winderEnd());
    }

    static Line of(OtherLane other, Lane lane) {
        return new Line(other.mount().on(lane), other.winder().on(lane));
    }

    double length() {
        return mount.distanceTo(winder);
    }

    /** Point to segment: to the foot of the perpendicular, or to the nearer end where that lies outside (JTS). */
    double distanceTo(Spot spot) {
        return segment().distance(spot.coordinate());
    }

    /** Zero when they cross (JTS). */
    double distanceTo(Line other) {
        return segment().distance(other.segment());
    }

    /** What the nearest point belongs to, in words: the line, or an end. */
    String nearest(Spot spot) {
        double share = segment().projectionFactor(spot.coordinate());
        return share < 0 ? End.MOUNT.words() : share > 1 ? End.WINDER.words() : "the line";
    }

    /** The same with the winder's feet as its end. */
    Line upToTheFeet(double standingMm) {
        return new Line(mount, past(End.WINDER, standingMm, 0));
    }

    /** The point so far past an end, and so far to the left of the lengthened line. */
    Spot past(End end, double pastMm, double leftMm) {
        double ux = (winder.alongMm() - mount.alongMm()) / length();
        double uy = (winder.besideMm() - mount.besideMm()) / length();
        Spot from = end == End.MOUNT ? mount : winder;
        double by = end == End.MOUNT ? -pastMm : pastMm;
        return new Spot(from.alongMm() + by * ux - leftMm * uy, from.besideMm() + by * uy + leftMm * ux);
    }

    /** How far past an end along the lengthened line; below zero before it. */
    double pastMm(End end, Spot spot) {
        double share = segment().projectionFactor(spot.coordinate());
        return length() * (end == End.MOUNT ? -share : share - 1);
    }

    /** From the line, lengthened without end. */
    double besideMm(Spot spot) {
        return segment().distancePerpendicular(spot.coordinate());
    }

    private LineSegment segment() {
        return new LineSegment(mount.coordinate(), winder.coordinate());
    }
}
