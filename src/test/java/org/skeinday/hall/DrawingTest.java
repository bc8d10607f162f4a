package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

class DrawingTest {
    private static Length mm(double mm) {
        return Length.ofMillimetres(mm);
    }

    private static Placed placed(String name, Placed.Kind kind, double along, double beside, Side side) {
        return new Placed(name, kind, Taped.beside(mm(along), mm(beside), side));
    }

    private static Drawing draw(WindingPlace place, UnitSystem units) {
        Separation usual = Separation.usual();
        return Drawing.of(place, usual, usual.judge(place, mm(4000)), units);
    }

    private static final WindingPlace ALONE = WindingPlace.of(new Lane("lane 1", mm(4600)));

    private static final WindingPlace USUAL = ALONE.with(
                    placed("blue stand", Placed.Kind.STAND, 2000, 1400, Side.LEFT),
                    placed("red stand", Placed.Kind.STAND, 2600, 1400, Side.LEFT),
                    placed("reader", Placed.Kind.READER, 200, 1500, Side.RIGHT),
                    placed("helper", Placed.Kind.HELPER, 1000, 1600, Side.RIGHT),
                    placed("parents", Placed.Kind.SPECTATOR, 4000, 3000, Side.RIGHT))
            .withRoomPastWinder(mm(800));

    private static final WindingPlace FULL = USUAL.beside(new OtherLane(
                    "the other team's lane",
                    Taped.beside(mm(0), mm(3500), Side.LEFT),
                    Taped.beside(mm(4000), mm(3500), Side.LEFT)))
            .withAir(
                    Air.towardsOClock(2, 0.15),
                    List.of(new Fan("heater", Taped.beside(mm(6000), mm(5000), Side.RIGHT), Air.towardsOClock(9, 1.0))),
                    Taped.beside(mm(2000), mm(5000), Side.RIGHT));

    private static final WindingPlace CROWDED = ALONE.with(
            placed("stand number one", Placed.Kind.STAND, 100, 1300, Side.LEFT),
            placed("stand number two", Placed.Kind.STAND, 300, 1300, Side.LEFT),
            placed("stand number three", Placed.Kind.STAND, 500, 1300, Side.LEFT),
            placed("stand number four", Placed.Kind.STAND, 700, 1300, Side.LEFT),
            placed("reader", Placed.Kind.READER, 0, 600, Side.RIGHT));

    private static final Map<String, WindingPlace> LAYOUTS =
            new TreeMap<>(Map.of("alone", ALONE, "usual", USUAL, "full", FULL, "crowded", CROWDED));

    @TestFactory
    Stream<DynamicTest> no_word_hits_another_in_the_ordinary_layouts() {
        return each((name, drawing) -> {
            List<Label> labels = drawing.labels();
            for (int i = 0; i < labels.size(); i++) {
                for (int j = 0; j < i; j++) {
                    assertFalse(
                            collide(labels.get(i), labels.get(j)),
                            name + ": " + labels.get(i) + " and " + labels.get(j));
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> no_word_hits_a_dot_or_a_line_in_the_ordinary_layouts() {
        return each((name, drawing) -> {
            for (Label label : drawing.labels()) {
                for (Shape shape : drawing.shapes()) {
                    if (shape.form() != Shape.Form.AREA) {
                        List<Spot> ground = shape.form() == Shape.Form.DOT
                                ? Box.square(shape.at().get(0), shape.radius())
                                : shape.at();
                        assertEquals(0, Overlap.depth(label.box(), ground), label.text() + " on " + shape.role());
                    }
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> everything_lies_inside_the_picture() {
        return each((name, drawing) -> {
            Stream<Spot> all = Stream.concat(
                    drawing.shapes().stream().flatMap(s -> s.at().stream()),
                    drawing.labels().stream().flatMap(l -> l.box().stream()));
            assertTrue(all.allMatch(p -> p.alongMm() >= drawing.leftMm()
                    && p.alongMm() <= drawing.leftMm() + drawing.widthMm()
                    && p.besideMm() >= drawing.topMm()
                    && p.besideMm() <= drawing.topMm() + drawing.heightMm()));
        });
    }

    private interface Look {
        void at(String name, Drawing drawing);
    }

    private static Stream<DynamicTest> each(Look look) {
        return LAYOUTS.entrySet().stream()
                .flatMap(e -> Stream.of(UnitSystem.values())
                        .map(u -> dynamicTest(
                                e.getKey() + " " + u.word(), () -> look.at(e.getKey(), draw(e.getValue(), u)))));
    }

    @Test
    void words_that_cannot_be_put_apart_are_seen_by_the_check() {
        Label one = new Label("mount", 0, 0, Label.Anchor.START, 100, false);
        Label other = new Label("winder", 100, 50, Label.Anchor.START, 100, false);
        assertTrue(collide(one, other));
    }

    @Test
    void left_of_the_line_is_up() {
        Shape stand = only(draw(USUAL, UnitSystem.METRIC), Shape.Role.STAND).get(0);
        assertEquals("2000", stand.cx());
        assertEquals("-1400", stand.cy());
    }

    @Test
    void the_lane_is_drawn_from_end_to_end() {
        assertEquals(
                "0,0 4600,0",
                only(draw(ALONE, UnitSystem.METRIC), Shape.Role.LANE).get(0).points());
    }

    @Test
    void a_stand_too_near_is_broken_with_its_ground_and_the_others_are_not() {
        WindingPlace place = USUAL.with(placed("green stand", Placed.Kind.STAND, 3200, 1100, Side.LEFT));
        Drawing drawing = draw(place, UnitSystem.METRIC);
        assertEquals(
                List.of(false, false, true),
                only(drawing, Shape.Role.STAND).stream().map(Shape::broken).toList());
        assertTrue(only(drawing, Shape.Role.MODEL_REACH).get(0).broken());
        assertFalse(only(drawing, Shape.Role.PEOPLE_REACH).get(0).broken());
        assertTrue(drawing.labels().stream().anyMatch(l -> l.text().equals("green stand") && l.broken()));
    }

    @Test
    void the_zone_with_somebody_in_it_is_broken_and_the_other_is_not() {
        WindingPlace place = ALONE.with(placed("parents", Placed.Kind.SPECTATOR, 7000, 0, Side.LEFT));
        List<Shape> zones = only(draw(place, UnitSystem.METRIC), Shape.Role.END_ZONE);
        assertEquals(List.of(false, true), zones.stream().map(Shape::broken).toList());
        assertEquals("4600,-1000 7600,-1000 7600,1000 4600,1000", zones.get(1).points());
    }

    @Test
    void another_lane_too_near_is_broken_and_one_further_off_is_not() {
        assertFalse(only(draw(FULL, UnitSystem.METRIC), Shape.Role.OTHER_LANE)
                .get(0)
                .broken());
        WindingPlace close = ALONE.beside(new OtherLane(
                "lane 2", Taped.beside(mm(0), mm(1900), Side.LEFT), Taped.beside(mm(4000), mm(1900), Side.LEFT)));
        assertTrue(only(draw(close, UnitSystem.METRIC), Shape.Role.OTHER_LANE)
                .get(0)
                .broken());
    }

    @Test
    void tapes_that_cannot_meet_are_left_out() {
        WindingPlace place =
                ALONE.with(new Placed("lost", Placed.Kind.STAND, Taped.fromEnds(mm(100), mm(100), Side.LEFT)));
        assertEquals(List.of(), only(draw(place, UnitSystem.METRIC), Shape.Role.STAND));
    }

    @Test
    void the_scale_bar_is_as_long_as_it_says() {
        Drawing drawing = draw(USUAL, UnitSystem.METRIC);
        List<Spot> bar = only(drawing, Shape.Role.SCALE).get(0).at();
        assertEquals(2000, bar.get(0).distanceTo(bar.get(1)), 1e-9);
        assertTrue(drawing.labels().stream().anyMatch(l -> l.text().equals("2 m")));
        Drawing inches = draw(USUAL, UnitSystem.INCH);
        List<Spot> feet = only(inches, Shape.Role.SCALE).get(0).at();
        assertEquals(5 * 304.8, feet.get(0).distanceTo(feet.get(1)), 1e-9);
        assertTrue(inches.labels().stream().anyMatch(l -> l.text().equals("5 ft")));
    }

    @Test
    void drift_fan_and_launch_are_drawn_when_they_are_known() {
        Drawing drawing = draw(FULL, UnitSystem.METRIC);
        assertEquals(2, only(drawing, Shape.Role.DRIFT).size());
        assertEquals(3, only(drawing, Shape.Role.FAN).size());
        assertEquals(1, only(drawing, Shape.Role.LAUNCH).size());
        assertEquals(List.of(), only(draw(USUAL, UnitSystem.METRIC), Shape.Role.DRIFT));
    }

    /** Towards two o'clock: 60 degrees to the right, which is down. */
    @Test
    void the_arrow_of_the_drift_points_where_the_air_goes() {
        List<Spot> head =
                only(draw(FULL, UnitSystem.METRIC), Shape.Role.DRIFT).get(1).at();
        List<Spot> shaft =
                only(draw(FULL, UnitSystem.METRIC), Shape.Role.DRIFT).get(0).at();
        double dx = head.get(0).alongMm() - shaft.get(0).alongMm();
        double dy = head.get(0).besideMm() - shaft.get(0).besideMm();
        assertEquals(60, Math.toDegrees(Math.atan2(dy, dx)), 1e-9);
    }

    @Test
    void a_long_name_is_cut() {
        assertEquals(
                "the table of the team n…",
                new Label("the table of the team next to the door", 0, 0, Label.Anchor.START, 10, false).text());
    }

    private static boolean collide(Label one, Label other) {
        return Overlap.depth(one.box(), other.box()) > 0;
    }

    private static List<Shape> only(Drawing drawing, Shape.Role role) {
        return drawing.shapes().stream().filter(s -> s.role() == role).toList();
    }
}
