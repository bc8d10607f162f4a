package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.skeinday.units.EnumWords;
import org.skeinday.units.Length;

class TwoLanesTest {
    private static final GeometryFactory SHAPES = new GeometryFactory();
    private static final Lane LANE = new Lane("lane 1", mm(4000));

    private static Length mm(double mm) {
        return Length.ofMillimetres(mm);
    }

    private static Taped at(double along, double left) {
        Side side = left < 0 ? Side.RIGHT : Side.LEFT;
        return along < 0
                ? Taped.behindMount(mm(-along), mm(Math.abs(left)), side)
                : Taped.beside(mm(along), mm(Math.abs(left)), side);
    }

    private static List<String> findings(Taped mount, Taped winder) {
        WindingPlace place = WindingPlace.of(LANE).beside(new OtherLane("lane 2", mount, winder));
        return Separation.usual().judge(place, null).findings().stream()
                .map(f -> EnumWords.of(f.rule()) + ":" + f.shortByMm() + " " + f.against())
                .toList();
    }

    /** Zones are 1 m to each side: lanes two metres apart touch with their zones and no more. */
    @Test
    void parallel_lanes_two_metres_apart_are_allowed_and_one_millimetre_nearer_their_zones_overlap() {
        assertEquals(List.of(), findings(at(0, 2000), at(4000, 2000)));
        assertEquals(
                List.of("zones-overlap:1 the zone past the mount", "zones-overlap:1 the zone past the winder end"),
                findings(at(0, 1999), at(4000, 1999)));
    }

    /** Mounts back to back: two zones of 3 m need 6 m between the mounts. */
    @Test
    void lanes_back_to_back_need_both_zones_between_them() {
        assertEquals(List.of(), findings(at(-6000, 0), at(-10_000, 0)));
        assertEquals(List.of("zones-overlap:1 the zone past the mount"), findings(at(-5999, 0), at(-10_000, 0)));
    }

    /** Lane 2 at a right angle, 500 mm of walking room past its winder end at 2000: the nearest is 1500. */
    @Test
    void the_other_winders_feet_keep_off_this_line() {
        assertEquals(List.of("zones-overlap:1000 this lane's walking way"), findings(at(2000, 6000), at(2000, 2000)));
        assertEquals(
                List.of("lanes-too-near:1 this lane", "zones-overlap:1001 this lane's walking way"),
                findings(at(2000, 5999), at(2000, 1999)));
    }

    /** Its zone ends 3 m past its winder end; from 3000 mm on it does not reach this line. */
    @Test
    void the_other_lanes_zone_keeps_off_this_walking_way() {
        assertEquals(List.of(), findings(at(2000, 7000), at(2000, 3000)));
        assertEquals(List.of("zones-overlap:1 this lane's walking way"), findings(at(2000, 7000), at(2000, 2999)));
    }

    /** Lane 2 passes behind this mount, across its zone of 3 m. */
    @Test
    void a_lane_across_the_ground_past_an_end_is_seen() {
        assertEquals(List.of(), findings(at(-3000, -7000), at(-3000, 7000)));
        assertEquals(List.of("zones-overlap:1 the zone past the mount"), findings(at(-2999, -7000), at(-2999, 7000)));
    }

    @Test
    void lanes_that_cross_are_as_close_as_can_be() {
        assertTrue(findings(at(2000, -3000), at(2000, 3000)).contains("lanes-too-near:1500 this lane"));
    }

    /** By JTS: moved by the depth in some direction the shapes only touch; where the depth is 0 nothing is shared. */
    @ParameterizedTest
    @ValueSource(longs = {3, 29, 71})
    void the_depth_of_two_rectangles_is_the_least_way_that_parts_them(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 80; i++) {
            List<Spot> one = rectangle(random);
            List<Spot> other = rectangle(random);
            double depth = Overlap.depth(one, other);
            double shared = polygon(one).intersection(polygon(other)).getArea();
            assertEquals(depth > 1e-6, shared > 1e-6, "seed " + seed + " round " + i);
            if (depth > 0.1) {
                assertTrue(sharedAfter(one, other, depth * 0.99) > 0, "a shorter way parts them, seed " + seed);
                assertTrue(
                        sharedAfter(one, other, depth + 0.5)
                                < 1e-3 * polygon(one).getArea(),
                        "seed " + seed);
            }
        }
    }

    /** The least area still shared after a move of so much in any of many directions. */
    private static double sharedAfter(List<Spot> one, List<Spot> other, double by) {
        double least = Double.POSITIVE_INFINITY;
        for (int degrees = 0; degrees < 360; degrees++) {
            double angle = Math.toRadians(degrees);
            Geometry moved = AffineTransformation.translationInstance(by * Math.cos(angle), by * Math.sin(angle))
                    .transform(polygon(other));
            least = Math.min(least, polygon(one).intersection(moved).getArea());
        }
        return least;
    }

    private static List<Spot> rectangle(Random random) {
        Spot from = new Spot(random.nextInt(6000), random.nextInt(6000));
        Spot to = from.towards(random.nextInt(360), 1000 + random.nextInt(3000));
        return new EndZone(new Line(from, to), End.WINDER, 500 + random.nextInt(3000), 300 + random.nextInt(1500))
                .corners();
    }

    private static Geometry polygon(List<Spot> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            ring[i] = corners.get(i % corners.size()).coordinate();
        }
        return SHAPES.createPolygon(ring);
    }
}
