package org.skeinday.hall;

import java.util.List;

/** The ground straight past an end of a lane, where nobody stands: a rectangle. Its edge does not belong to it. */
record EndZone(Line line, End end, double lengthMm, double halfWidthMm) {
    /** By how much a person must step back or aside to leave it; zero or less outside. */
    double depth(Spot spot) {
        double past = line.pastMm(end, spot);
        return past <= 0 ? 0 : Math.min(halfWidthMm - line.besideMm(spot), lengthMm - past);
    }

    List<Spot> corners() {
        return List.of(
                line.past(end, 0, halfWidthMm),
                line.past(end, lengthMm, halfWidthMm),
                line.past(end, lengthMm, -halfWidthMm),
                line.past(end, 0, -halfWidthMm));
    }
}
