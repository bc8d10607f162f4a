package org.skeinday.prepare.web;

import java.util.List;

/** Everybody whose name is kept. @param said what was just done, empty for nothing */
public record PeopleView(List<Person> people, String said) {
    /** @param known as what @param wrong why this name was not erased, empty when nothing was wrong */
    public record Person(String id, String name, String known, String wrong) {}
}
