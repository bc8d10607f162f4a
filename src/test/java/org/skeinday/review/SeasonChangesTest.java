package org.skeinday.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.skeinday.contest.CrewAdded;

class SeasonChangesTest {
    private static final LocalDate FIRST = LocalDate.of(2027, 9, 1);

    @Test
    void graduates_leave_clearances_are_earned_again_and_old_batches_are_to_be_broken_again() {
        NewSeason season = NewSeason.of(
                FIRST,
                List.of(
                        new NewSeason.Person("p1", "Ada", true),
                        new NewSeason.Person("p2", "Ben", false),
                        new NewSeason.Person("p3", "Cleo", false)),
                List.of(
                        new CrewAdded("p1", "", "winds,loads", 6, null),
                        new CrewAdded("p2", "", "winds,reads,loads", 4, null),
                        new CrewAdded("p2", "event-1", "winds", 4, null),
                        new CrewAdded("p3", "", "reads,times", null, null)),
                List.of(
                        new NewSeason.Batch("b1", "Lot 7", LocalDate.of(2026, 8, 20), null),
                        new NewSeason.Batch("b2", "Lot 8", LocalDate.of(2026, 8, 20), LocalDate.of(2027, 3, 1)),
                        new NewSeason.Batch("b3", "Lot 9", null, null)),
                NewSeason.DEFAULT_MONTHS);
        assertEquals(List.of("p1"), season.leaving());
        assertEquals(List.of(new CrewAdded("p2", "", "winds,reads", 0, null)), season.reset());
        assertEquals(List.of(new NewSeason.AgedBatch("b1", "Lot 7", 12)), season.aged());
        assertEquals(
                List.of(
                        "Ada leaves the team; past flights keep the name.",
                        "Ben winds with somebody beside again, clean winds count from none, and is cleared anew before"
                                + " loading a wound motor.",
                        "Batch Lot 7 is 12 months past its opening or last break test: break two or three motors"
                                + " before its K and ceiling are used."),
                season.words());
    }

    @Test
    void who_has_nothing_to_earn_again_is_not_named() {
        List<CrewAdded> crew =
                List.of(new CrewAdded("p1", "", "winds,reads", 0, null), new CrewAdded("p2", "", "times", null, null));
        assertEquals(
                new NewSeason(List.of(), List.of(), List.of(), List.of()),
                NewSeason.of(FIRST, List.of(), crew, List.of(), 12));
    }

    private static ChangeNextTime.Dated dated(String day, String... lines) {
        return new ChangeNextTime.Dated(day, "Cup of " + day, new ChangeNextTime("e" + day, List.of(lines)));
    }

    @Test
    void the_next_event_shows_what_was_written_after_the_last_one_before_it() {
        List<ChangeNextTime.Dated> all = List.of(
                dated("2026-10-03", "warm the motors"),
                dated("2026-11-28", "mark the floor first", "two readers"),
                dated("2027-01-09"),
                dated("2027-02-13", "later"));
        assertEquals(Optional.of(all.get(1)), ChangeNextTime.before("2027-02-13", all));
        assertEquals(Optional.of(all.get(0)), ChangeNextTime.before("2026-11-28", all));
        assertEquals(Optional.empty(), ChangeNextTime.before("2026-10-03", all));
    }

    @Test
    void up_to_three_lines_are_kept_as_typed_without_blank_ones() {
        ChangeNextTime typed = ChangeNextTime.typed("e", List.of(" tape first ", "", "two readers"));
        assertEquals(List.of("tape first", "two readers"), typed.lines());
        assertEquals(
                "What to change must have at most 3 lines, but had 4",
                assertThrows(IllegalArgumentException.class, () -> new ChangeNextTime("e", List.of("1", "2", "3", "4")))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> new ChangeNextTime("e", List.of(" ")));
        assertThrows(IllegalArgumentException.class, () -> new ChangeNextTime("e", List.of("x".repeat(201))));
    }
}
