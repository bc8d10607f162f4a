package org.skeinday.hall;

/**
 * Fact {@code place.in-use}: from now on it is wound there.
 *
 * @param placeId of a {@link PlaceMeasured}
 * @param sinceMs by the server's clock, epoch ms
 */
public record PlaceInUse(String placeId, long sinceMs) {}
