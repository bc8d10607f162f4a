package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT_CARD_LINE;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.skeinday.attempt.CardPrinted;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** What the attempt cards on paper show: of each attempt the one that was printed last. */
public final class PrintedCards {
    private PrintedCards() {}

    public static List<FactKind> kinds() {
        return List.of(FactKind.of("card.printed", CardPrinted.class, PrintedCards::printed));
    }

    private static void printed(Tx tx, CardPrinted fact) {
        tx.sql()
                .deleteFrom(ATTEMPT_CARD_LINE)
                .where(ATTEMPT_CARD_LINE.ENTRY_ID.eq(fact.entryId()).and(ATTEMPT_CARD_LINE.RULE.eq(fact.rule())))
                .execute();
        int place = 0;
        for (CardPrinted.Line line : fact.lines()) {
            tx.sql()
                    .insertInto(ATTEMPT_CARD_LINE)
                    .set(ATTEMPT_CARD_LINE.ENTRY_ID, fact.entryId())
                    .set(ATTEMPT_CARD_LINE.RULE, fact.rule())
                    .set(ATTEMPT_CARD_LINE.PLACE, place++)
                    .set(ATTEMPT_CARD_LINE.AT_MS, fact.atMs())
                    .set(ATTEMPT_CARD_LINE.LABEL, line.label())
                    .set(ATTEMPT_CARD_LINE.SHOWN, line.shown())
                    .execute();
        }
    }

    /** Of one entry, by attempt of the rules. */
    public static List<CardPrinted> ofEntry(Tx tx, String entry) {
        Map<Integer, List<CardPrinted.Line>> lines = new LinkedHashMap<>();
        Map<Integer, Long> at = new LinkedHashMap<>();
        tx.sql()
                .selectFrom(ATTEMPT_CARD_LINE)
                .where(ATTEMPT_CARD_LINE.ENTRY_ID.eq(entry))
                .orderBy(ATTEMPT_CARD_LINE.RULE, ATTEMPT_CARD_LINE.PLACE)
                .forEach(row -> {
                    at.put(row.getRule(), row.getAtMs());
                    lines.computeIfAbsent(row.getRule(), rule -> new ArrayList<>())
                            .add(new CardPrinted.Line(row.getLabel(), row.getShown()));
                });
        List<CardPrinted> cards = new ArrayList<>();
        lines.forEach((rule, shown) -> cards.add(new CardPrinted(entry, rule, at.getOrDefault(rule, 0L), shown)));
        return cards;
    }
}
