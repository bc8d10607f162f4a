package org.skeinday.platform.http;

/** A page that says what is wrong and what would be right. */
public record ProblemView(Frame frame, String words) {}
