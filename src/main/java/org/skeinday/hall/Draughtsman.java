package org.skeinday.hall;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.skeinday.units.Length;
import org.skeinday.units.UnitSystem;

/** Makes the drawing of one place: ground first, then lines, then dots, then words, at last what stands outside. */
final class Draughtsman {
    /** Letters are this part of the longer side of the ground: legible on a small tablet, and on paper. */
    private static final double TEXT = 1.0 / 42;

    private static final int QUARTER = 8;

    private final WindingPlace place;
    private final Separation separation;
    private final Verdict verdict;
    private final UnitSystem units;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Spot> extent = new ArrayList<>();
    private final List<Consumer<Labels>> words = new ArrayList<>();

    Draughtsman(WindingPlace place, Separation separation, Verdict verdict, UnitSystem units) {
        this.place = place;
        this.separation = separation;
        this.verdict = verdict;
        this.units = units;
    }

    Drawing drawing() {
        ground();
        Box bounds = bounds(List.of());
        double text = TEXT * Math.max(bounds.width(), bounds.height());
        lanes(text);
        dots(text);
        Labels labels = new Labels(text);
        shapes.stream().filter(s -> s.form() != Shape.Form.AREA).forEach(s -> labels.avoid(ground(s)));
        words.forEach(word -> word.accept(labels));
        Box inner = bounds(labels.placed()).grownBy(text);
        Surround surround = new Surround(inner, text, units);
        List<Label> all = new ArrayList<>(labels.placed());
        surround.scale(shapes, all);
        surround.drift(place.air(), shapes, all);
        Box outer = bounds(all).grownBy(text / 2);
        return new Drawing(outer.left(), outer.top(), outer.width(), outer.height(), shapes, all);
    }

    /** Everything that has an extent of its own, so that the size of letters follows from it. */
    private void ground() {
        Line mine = Line.of(place.lane());
        reach(mine, separation.people(), Shape.Role.PEOPLE_REACH, Rule.PERSON_TOO_NEAR, Rule.READER_TOO_NEAR);
        reach(mine, separation.model(), Shape.Role.MODEL_REACH, Rule.MODEL_TOO_NEAR, Rule.MODEL_TOO_NEAR);
        for (End end : End.values()) {
            boolean broken = verdict.has(end.rule()) || overlaps(end);
            area(separation.zone(mine, end).corners(), Shape.Role.END_ZONE, broken);
        }
        for (OtherLane other : others()) {
            for (End end : End.values()) {
                area(
                        separation.zone(theirs(other), end).corners(),
                        Shape.Role.OTHER_ZONE,
                        verdict.blames(other.name()));
            }
        }
        fixed(place.fans().stream().map(Fan::at).toList());
        if (place.launch() != null) {
            fixed(List.of(place.launch()));
        }
        fixed(place.placed().stream().map(Placed::at).toList());
    }

    /** Dots without size yet: only what they add to the extent. */
    private void fixed(List<Taped> all) {
        all.stream().filter(this::meets).forEach(at -> extent.add(down(at.on(place.lane()))));
    }

    private void reach(Line line, Length by, Shape.Role role, Rule rule, Rule orRule) {
        Coordinate[] round = new GeometryFactory()
                .createLineString(new Coordinate[] {
                    line.mount().coordinate(), line.winder().coordinate()
                })
                .buffer(by.millimetres(), QUARTER)
                .getCoordinates();
        List<Spot> corners = new ArrayList<>();
        for (int i = 0; i < round.length - 1; i++) {
            corners.add(Spot.of(round[i]));
        }
        area(corners, role, verdict.has(rule) || verdict.has(orRule));
    }

    private boolean overlaps(End end) {
        return verdict.findings().stream()
                .anyMatch(f -> f.rule() == Rule.ZONES_OVERLAP && f.against().equals(end.zone()));
    }

    private void lanes(double text) {
        for (OtherLane other : others()) {
            Line theirs = theirs(other);
            boolean broken = verdict.blames(other.name());
            shapes.add(new Shape(
                    Shape.Form.LINE, Shape.Role.OTHER_LANE, down(List.of(theirs.mount(), theirs.winder())), 0, broken));
            dot(Shape.Role.OTHER_LANE, theirs.mount(), text / 3, broken);
            word(other.name(), theirs.mount(), text / 3, broken);
        }
        Lane lane = place.lane();
        boolean tooShort = verdict.blames(lane.name());
        shapes.add(new Shape(
                Shape.Form.LINE, Shape.Role.LANE, down(List.of(lane.mountEnd(), lane.winderEnd())), 0, tooShort));
        dot(Shape.Role.MOUNT, lane.mountEnd(), text / 2, false);
        dot(Shape.Role.WINDER, lane.winderEnd(), text / 2, false);
        word("mount", lane.mountEnd(), text / 2, false);
        word("winder", lane.winderEnd(), text / 2, false);
        word(
                lane.name() + " " + units.room(lane.length()),
                new Spot(lane.length().millimetres() / 2, 0),
                0,
                tooShort);
    }

    private void dots(double text) {
        for (Placed placed : place.placed()) {
            if (meets(placed.at())) {
                named(placed.name(), placed.at(), role(placed.kind()), text, verdict.blames(placed.name()));
            }
        }
        for (Fan fan : place.fans()) {
            if (meets(fan.at())) {
                named(fan.name(), fan.at(), Shape.Role.FAN, text, false);
                if (fan.blows() != null) {
                    Spot from = fan.at().on(place.lane());
                    Spot to = from.towards(fan.blows().towardsDegrees(), 3 * text);
                    shapes.addAll(Surround.arrow(down(from), down(to), Shape.Role.FAN, text));
                }
            }
        }
        Taped launch = place.launch();
        if (launch != null && meets(launch)) {
            named("launch", launch, Shape.Role.LAUNCH, text, false);
        }
    }

    private static Shape.Role role(Placed.Kind kind) {
        return switch (kind) {
            case STAND -> Shape.Role.STAND;
            case READER -> Shape.Role.READER;
            case SPECTATOR, HELPER -> Shape.Role.PERSON;
        };
    }

    private void named(String name, Taped at, Shape.Role role, double text, boolean broken) {
        Spot spot = at.on(place.lane());
        dot(role, spot, text / 2, broken);
        word(name, spot, text / 2, broken);
    }

    private void dot(Shape.Role role, Spot at, double radius, boolean broken) {
        shapes.add(new Shape(Shape.Form.DOT, role, List.of(down(at)), radius, broken));
    }

    private void word(String text, Spot at, double radius, boolean broken) {
        words.add(labels -> labels.put(text, down(at), radius, broken));
    }

    private void area(List<Spot> corners, Shape.Role role, boolean broken) {
        shapes.add(new Shape(Shape.Form.AREA, role, down(corners), 0, broken));
    }

    /** What a word must not hit. */
    private static List<Spot> ground(Shape shape) {
        return shape.form() == Shape.Form.DOT ? Box.square(shape.at().get(0), shape.radius()) : shape.at();
    }

    private Box bounds(List<Label> labels) {
        List<Spot> all = new ArrayList<>(extent);
        shapes.forEach(s -> all.addAll(ground(s)));
        labels.forEach(l -> all.addAll(l.box()));
        return Box.around(all);
    }

    private boolean meets(Taped at) {
        return at.cannotMeet(place.lane()).isEmpty();
    }

    private List<OtherLane> others() {
        return place.others().stream()
                .filter(o -> o.cannotMeet(place.lane()).isEmpty())
                .toList();
    }

    private Line theirs(OtherLane other) {
        return Line.of(other, place.lane());
    }

    private static List<Spot> down(List<Spot> spots) {
        return spots.stream().map(Draughtsman::down).toList();
    }

    /** From the floor, where the left is above zero, to the picture, where down is. */
    private static Spot down(Spot spot) {
        return new Spot(spot.alongMm(), -spot.besideMm());
    }
}
