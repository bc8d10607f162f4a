package org.skeinday.attempt.web;

import java.util.List;

/**
 * What to fly on the attempts that are left.
 *
 * @param assigned motor and spare of the next attempt as all pages have them, in words
 * @param basis what is counted out, in words
 * @param missing what a choice would need, one sentence each; empty when nothing is missing
 */
public record ChoiceView(String title, String assigned, String basis, List<Row> rows, List<String> missing) {
    /** One choice. @param flights one for each, with motor, fraction and expected time @param risks in words */
    public record Row(List<String> flights, String score, String risks) {}
}
