package org.skeinday.steps;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Lists from rows and back. */
public final class Checklists {
    private Checklists() {}

    /**
     * In the order in which the lists first appear; items in the order of their rows.
     *
     * @throws IllegalArgumentException when a list breaks a rule, or its rows do not agree about it
     */
    public static List<Checklist> of(List<ChecklistRow> rows) {
        Map<String, List<ChecklistRow>> byList = new LinkedHashMap<>();
        rows.forEach(row ->
                byList.computeIfAbsent(row.list(), list -> new ArrayList<>()).add(row));
        return byList.values().stream().map(Checklists::one).toList();
    }

    private static Checklist one(List<ChecklistRow> rows) {
        ChecklistRow first = rows.get(0);
        for (ChecklistRow row : rows) {
            if (!row.agreesWith(first)) {
                throw new IllegalArgumentException("Rows of the list '" + first.list()
                        + "' must agree in revision, title, moment, way, aloud and next, but the one of '" + row.item()
                        + "' does not");
            }
        }
        return new Checklist(
                first.list(),
                first.revision(),
                first.title(),
                Moment.ofWord(first.moment()),
                Way.ofWord(first.way()),
                first.aloud(),
                first.next(),
                withLine(Moment.ofWord(first.moment()), rows));
    }

    /** Teams wrote lists before the line had an item of its own: it is asked there too, after all that is critical. */
    private static List<Step> withLine(Moment moment, List<ChecklistRow> rows) {
        List<Step> steps = new ArrayList<>(rows.stream().map(ChecklistRow::step).toList());
        if (moment == Moment.BEFORE_WINDING && steps.stream().noneMatch(s -> s.id().equals(Step.LINE))) {
            long critical = steps.stream().filter(Step::critical).count();
            steps.add((int) critical, Step.line());
        }
        return steps;
    }

    public static List<ChecklistRow> rows(Checklist list) {
        return list.steps().stream()
                .map(step -> new ChecklistRow(
                        list.id(),
                        list.revision(),
                        list.title(),
                        list.moment().word(),
                        list.way().word(),
                        list.aloud(),
                        list.next(),
                        step.id(),
                        step.text(),
                        step.reason(),
                        step.critical(),
                        step.answer().word()))
                .toList();
    }
}
