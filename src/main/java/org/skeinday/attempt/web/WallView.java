package org.skeinday.attempt.web;

import java.util.List;

/**
 * Results for a screen that the hall sees: no names of helpers, no advice, nothing to press.
 *
 * @param window of the attempt under way or next, with whose it is
 */
public record WallView(String title, String whose, WindowClock window, List<ResultView.Row> rows, String scoreWords) {}
