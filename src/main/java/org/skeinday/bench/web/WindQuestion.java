package org.skeinday.bench.web;

/**
 * A wind of which something is asked, or that was left out.
 *
 * @param wind its id
 * @param title when it was wound, with which motor and how many turns
 * @param asked what is asked about it, in words; why it is left out where it is
 * @param seen how the form shows it, for the server to see whether that still stands
 * @param out whether it is left out
 */
public record WindQuestion(String wind, String title, String asked, String seen, boolean out) {}
