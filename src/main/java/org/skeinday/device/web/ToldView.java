package org.skeinday.device.web;

/** What was done, in one sentence or two. */
public record ToldView(String words) {}
