package org.skeinday.platform.http;

import java.util.List;

/**
 * What stands around every page.
 *
 * @param banner trouble that every page must show, empty when all is well
 */
public record Frame(String title, String who, String banner, List<Way> ways) {
    /** One word in the bar. */
    public record Way(String word, String address, boolean here) {}

    private record Place(String word, String address, Role least) {}

    private static final List<Place> PLACES = List.of(
            new Place("Now", "/", Role.VIEWER),
            new Place("Timing", "/timing", Role.TIMEKEEPER),
            new Place("Result sheet", "/results", Role.VIEWER),
            new Place("Join", "/devices", Role.CAPTAIN));

    /** The frame of the page at {@code address}: only the pages of the caller's role are in the bar. */
    public static Frame of(String title, String address, Caller caller, String name, String banner) {
        List<Way> ways = PLACES.stream()
                .filter(place -> caller.role().covers(place.least()))
                .map(place ->
                        new Way(place.word(), place.address(), place.address().equals(address)))
                .toList();
        String who = caller.device().equals("laptop")
                ? "laptop"
                : name + " · " + caller.role().word();
        return new Frame(title, who, banner, ways);
    }
}
