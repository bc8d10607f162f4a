package org.skeinday.platform.http;

/** An error as a person reads it. @param reference to find it in the log, empty when there is nothing to find */
public record ErrorView(String heading, String sentence, String reference) {}
