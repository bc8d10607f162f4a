package org.skeinday.review.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.skeinday.review.BatchOfWinds;
import org.skeinday.review.DayPictures;
import org.skeinday.review.Finding;
import org.skeinday.review.FlightPictures;
import org.skeinday.review.FlightRow;
import org.skeinday.review.Picture;
import org.skeinday.units.UnitSystem;

/** All pictures of some flights; those that have nothing to draw as one line each. */
record PicturesOf(List<FlightRow> flights, List<Finding> findings, List<BatchOfWinds> batches, UnitSystem units) {
    /** More flights make a page of their own: it is long. */
    static final int MOST_BESIDE = 300;

    EveningView.Pictures view() {
        List<PictureView> drawn = new ArrayList<>();
        List<String> empty = new ArrayList<>();
        for (Picture picture : all()) {
            if (picture.isEmpty()) {
                empty.add(picture.title() + ".");
            } else {
                drawn.add(PictureView.of(picture));
            }
        }
        return new EveningView.Pictures(drawn, empty, "");
    }

    private List<Picture> all() {
        var ofFlights = new FlightPictures(flights, findings, units);
        List<Picture> all = new ArrayList<>(List.of(
                ofFlights.timeByUse(),
                ofFlights.timeAgainstLaunchTorque(),
                ofFlights.shareRemaining(),
                ofFlights.meanSpeed(),
                ofFlights.watchesSpread(),
                DayPictures.durations(flights, findings),
                DayPictures.temperature(flights)));
        Set<String> ids = flights.stream().map(FlightRow::id).collect(Collectors.toSet());
        for (BatchOfWinds batch : batches) {
            all.add(batch.picture(ids, units));
            all.add(batch.heldPicture(ids, units));
        }
        return all;
    }
}
