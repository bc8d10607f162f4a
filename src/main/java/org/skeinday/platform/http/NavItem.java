package org.skeinday.platform.http;

/** A word in the bar, where it leads, and from which role on it is shown. */
public record NavItem(String word, String path, Role minimum) {}
