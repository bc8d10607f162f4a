package org.skeinday.review.web;

import java.util.List;

/**
 * What to change next time.
 *
 * @param lines three, as typed; empty ones are open
 * @param seen the lines as they are in the record
 * @param problem why nothing was saved, empty when nothing went wrong
 */
public record ChangeView(String event, List<String> lines, List<String> seen, String problem, boolean saved) {}
