package org.skeinday.paper.web;

import java.util.List;
import org.skeinday.paper.AttemptCard;
import org.skeinday.steps.Caution;

/**
 * Cards to print.
 *
 * @param printed the moment that the cards are of, in words
 * @param none why there is none, empty when there are some
 * @param cautions at the foot of each card, with their reason
 */
public record CardsView(
        List<AttemptCard> cards, List<String> rules, String printed, String none, List<Caution> cautions) {}
