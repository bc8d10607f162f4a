package org.skeinday.winding;

/**
 * Fact {@code wind.winder}: who was named for winding when this wind began.
 *
 * @param personId {@link #NOBODY} where nobody was: then nobody is credited with it who is named later
 */
public record WindWinder(String windId, String personId) {
    public static final String NOBODY = "";
}
