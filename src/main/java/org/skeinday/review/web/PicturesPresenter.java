package org.skeinday.review.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.skeinday.platform.http.Apart;
import org.skeinday.review.BatchOfWinds;
import org.skeinday.review.DayPictures;
import org.skeinday.review.Finding;
import org.skeinday.review.FlightPictures;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Picture;
import org.skeinday.units.UnitSystem;

/** All pictures of some flights; those that have nothing to draw as one line each. */
record PicturesPresenter(
        List<FlightRow> flights, List<Finding> findings, List<BatchOfWinds> batches, UnitSystem units) {
    /** More flights make a page of their own: it is long. */
    static final int MOST_BESIDE = 300;

    EveningView.Pictures view() {
        List<ChartView> drawn = new ArrayList<>();
        List<String> empty = new ArrayList<>();
        for (Supplier<Picture> drawing : all()) {
            Apart.made("A picture", () -> look(drawing.get(), drawn, empty), empty::add);
        }
        return new EveningView.Pictures(drawn, empty, "");
    }

    private static boolean look(Picture picture, List<ChartView> drawn, List<String> empty) {
        return picture.isEmpty() ? empty.add(picture.title() + ".") : drawn.add(ChartView.of(picture));
    }

    private List<Supplier<Picture>> all() {
        var ofFlights = new FlightPictures(flights, findings, units);
        List<Supplier<Picture>> all = new ArrayList<>(List.of(
                ofFlights::timeByUse,
                ofFlights::timeAgainstLaunchTorque,
                ofFlights::shareRemaining,
                ofFlights::meanSpeed,
                ofFlights::watchesSpread,
                () -> DayPictures.durations(flights, findings),
                () -> DayPictures.temperature(flights)));
        Set<String> ids = flights.stream().map(FlightRow::id).collect(Collectors.toSet());
        for (BatchOfWinds batch : batches) {
            all.add(() -> batch.picture(ids, units));
            all.add(() -> batch.heldPicture(ids, units));
        }
        return all;
    }
}
