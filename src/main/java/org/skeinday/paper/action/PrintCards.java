package org.skeinday.paper.action;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.skeinday.attempt.CardPrinted;
import org.skeinday.contest.EntryAdded;
import org.skeinday.contest.store.EntryStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActContext;
import org.skeinday.platform.record.ActKind;
import org.skeinday.platform.record.Decision;
import org.skeinday.platform.record.Fact;

/** Attempt cards go to paper: kept is what they show, so that a page can say which of them are out of date. */
public final class PrintCards {
    /** Content of {@code card.print}: as the server has just made them. */
    public record Print(List<Card> cards) {}

    /** @param entry id @param rule which attempt of the rules, from 1 */
    public record Card(String entry, int rule, List<CardPrinted.Line> lines) {}

    private PrintCards() {}

    public static List<ActKind<?>> kinds() {
        return List.of(new ActKind<>("card.print", Print.class, PrintCards::decide));
    }

    static Decision decide(Tx tx, ActContext context, Print print) {
        if (print.cards().isEmpty()) {
            return Decision.refused("There is no card to print: no own entry has an attempt left");
        }
        for (Card card : print.cards()) {
            if (EntryStore.find(tx, card.entry()).filter(EntryAdded::own).isEmpty()) {
                return new Decision.Outdated("An entry is not ours any more. Look again, then print.");
            }
        }
        long atMs = context.now().toEpochMilli();
        return new Decision.Decided(
                print.cards().stream()
                        .map(card -> Fact.of(
                                "card.printed",
                                new CardPrinted(card.entry(), card.rule(), atMs, fitting(card.lines()))))
                        .toList(),
                Map.of(),
                Set.of("cards"));
    }

    /** What is longer than the record has room for is compared by its beginning. */
    private static List<CardPrinted.Line> fitting(List<CardPrinted.Line> lines) {
        return lines.stream()
                .limit(CardPrinted.MOST_LINES)
                .map(line -> new CardPrinted.Line(
                        cut(line.label(), CardPrinted.LONGEST_LABEL), cut(line.shown(), CardPrinted.LONGEST_VALUE)))
                .toList();
    }

    /** As the record keeps it. */
    public static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most);
    }
}
