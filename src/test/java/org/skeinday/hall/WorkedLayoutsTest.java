package org.skeinday.hall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.skeinday.units.EnumWords;

/** Layouts worked by hand, from both sides of each limit; distances against hand and against JTS geometries. */
class WorkedLayoutsTest {
    private static final GeometryFactory SHAPES = new GeometryFactory();

    @TestFactory
    Stream<DynamicTest> each_row_breaks_just_what_was_worked_out_by_hand() throws IOException {
        return WorkedLayouts.rows().stream()
                .map(row -> dynamicTest(row.text(), () -> assertEquals(row.broken(), broken(row))));
    }

    private static String broken(WorkedLayouts.Row row) {
        WindingPlace place = WindingPlace.of(row.lane()).with(row.placed());
        String all = Separation.usual().judge(place, null).findings().stream()
                .map(f -> EnumWords.of(f.rule()) + ":" + f.shortByMm())
                .collect(Collectors.joining("|"));
        return all.isEmpty() ? "none" : all;
    }

    @TestFactory
    Stream<DynamicTest> each_distance_is_the_one_by_hand_and_that_of_the_geometry_library() throws IOException {
        return WorkedLayouts.rows().stream().map(row -> dynamicTest(row.text(), () -> assertDistance(row)));
    }

    private static void assertDistance(WorkedLayouts.Row row) {
        Spot spot = row.placed().at().on(row.lane());
        Geometry line = SHAPES.createLineString(new Coordinate[] {
            row.lane().mountEnd().coordinate(), row.lane().winderEnd().coordinate()
        });
        double byLibrary = line.distance(SHAPES.createPoint(spot.coordinate()));
        double ours = Line.of(row.lane()).distanceTo(spot);
        assertEquals(byLibrary, ours, 1e-6);
        assertEquals(row.nearestMm(), ours, 0.051);
    }

    @TestFactory
    Stream<DynamicTest> a_finding_says_the_distance_and_what_is_missing_to_the_limit() throws IOException {
        return WorkedLayouts.rows().stream()
                .filter(row -> row.broken().contains("too-near"))
                .map(row -> dynamicTest(row.text(), () -> {
                    Shortfall near = Separation.usual()
                            .judge(WindingPlace.of(row.lane()).with(row.placed()), null)
                            .findings()
                            .get(0);
                    assertEquals(row.nearestMm(), near.is().millimetres(), 0.051);
                    assertEquals(
                            near.least().millimetres(),
                            near.is().millimetres() + near.shortBy().millimetres(),
                            1e-9);
                }));
    }

    @Test
    void three_layouts_hold_rows_on_both_sides_of_each_limit() throws IOException {
        List<WorkedLayouts.Row> rows = WorkedLayouts.rows();
        assertEquals(3, rows.stream().map(WorkedLayouts.Row::layout).distinct().count());
        var broken = new TreeSet<String>();
        rows.forEach(row -> Arrays.stream(row.broken().split("\\|"))
                .map(b -> b.replaceAll(":.*", ""))
                .forEach(broken::add));
        assertEquals(
                List.of(
                        "in-line-with-mount",
                        "in-line-with-winder",
                        "model-too-near",
                        "none",
                        "person-too-near",
                        "reader-behind-meter",
                        "reader-too-near"),
                List.copyOf(broken));
        assertTrue(rows.stream().filter(r -> r.broken().equals("none")).count() > 15);
    }
}
