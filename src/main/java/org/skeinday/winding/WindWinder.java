package org.skeinday.winding;

/** Fact {@code wind.winder}: who was named for winding when this wind began. */
public record WindWinder(String windId, String personId) {}
