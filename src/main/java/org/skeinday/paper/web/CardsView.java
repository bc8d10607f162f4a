package org.skeinday.paper.web;

import java.util.List;
import org.skeinday.paper.AttemptCard;

/** Cards to print. @param none why there is none, empty when there are some */
public record CardsView(List<AttemptCard> cards, List<String> rules, String none) {}
