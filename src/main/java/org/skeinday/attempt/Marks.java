package org.skeinday.attempt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.skeinday.timing.Contact;
import org.skeinday.units.FlightTime;

/** The marks of one attempt's timekeepers and what they say. */
public final class Marks {
    private final List<WatchMarked> all;

    /** @param all in the order in which the record took them in: a clock may have been set meanwhile */
    public Marks(List<WatchMarked> all) {
        this.all = List.copyOf(all);
    }

    /** Watches whose timekeeper said that they are ready, or pressed for the release. */
    public List<Integer> ready() {
        return IntStream.rangeClosed(1, 3)
                .filter(slot -> of(slot).stream().anyMatch(m -> m.is(WatchMark.READY) || m.is(WatchMark.RELEASED)))
                .boxed()
                .toList();
    }

    /**
     * The first release that no watch has taken back: the one that counts for the window.
     *
     * @param without watches that the captain has judged failed or left out
     */
    public Optional<WatchMarked> release(Set<Integer> without) {
        return IntStream.rangeClosed(1, 3)
                .filter(slot -> !without.contains(slot))
                .mapToObj(this::release)
                .flatMap(Optional::stream)
                .min(Comparator.comparingLong(WatchMarked::atMs));
    }

    /** What this watch says of the release, unless it took it back. */
    public Optional<WatchMarked> release(int slot) {
        return of(slot).stream()
                .filter(m -> m.is(WatchMark.RELEASED) || m.is(WatchMark.NOT_RELEASED))
                .reduce((earlier, later) -> later)
                .filter(m -> m.is(WatchMark.RELEASED));
    }

    /** When and for how long the building held the model as this watch saw it. */
    public List<Contact> held(int slot) {
        List<Contact> held = new ArrayList<>();
        @Nullable Long from = null;
        for (WatchMarked mark : asFlown(slot)) {
            if (mark.is(WatchMark.HELD) && from == null) {
                from = mark.msOrZero();
            } else if (mark.is(WatchMark.FREE) && from != null) {
                held.add(new Contact("", from, Math.max(from, mark.msOrZero())));
                from = null;
            }
        }
        if (from != null) {
            held.add(new Contact("", from, null));
        }
        return held;
    }

    /** Ids of this watch's marks of what held the model and let it go, which stand. */
    public List<String> catches(int slot) {
        return flight(slot).stream()
                .filter(m -> m.is(WatchMark.HELD) || m.is(WatchMark.FREE))
                .map(WatchMarked::id)
                .toList();
    }

    /** The contacts that this watch marked, in words; empty when there was none. */
    public String contacts(int slot) {
        List<String> words = new ArrayList<>();
        flight(slot).stream()
                .filter(m -> m.is(WatchMark.TOUCHED))
                .forEach(m -> words.add("touched at " + tenths(m.msOrZero())));
        held(slot).forEach(contact -> {
            Long freed = contact.freedMs();
            words.add("caught at " + tenths(contact.fromMs())
                    + (freed == null
                            ? ""
                            : " for " + new FlightTime((freed - contact.fromMs()) / 100 * 100).seconds(1) + " s"));
        });
        return String.join(", ", words);
    }

    /** What any watch marked of contacts, in words; empty when none did. */
    public String contacts() {
        return IntStream.rangeClosed(1, 3)
                .mapToObj(this::contacts)
                .filter(words -> !words.isEmpty())
                .findFirst()
                .orElse("");
    }

    /** Nobody sees a contact to the millisecond; the marks have it. */
    private static String tenths(long ms) {
        return new FlightTime(ms / 100 * 100).text(1);
    }

    /** The first moment at which any watch saw the model touch something, ms after the release. */
    public Optional<Long> firstContactMs() {
        return contactsMs().stream().min(Comparator.naturalOrder());
    }

    /** Each moment at which any watch saw the model touch something, ms after the release. */
    public List<Long> contactsMs() {
        return IntStream.rangeClosed(1, 3)
                .boxed()
                .flatMap(slot -> flight(slot).stream())
                .filter(m -> m.is(WatchMark.TOUCHED) || m.is(WatchMark.HELD))
                .map(WatchMarked::msOrZero)
                .toList();
    }

    /** What speaks against the clock of this watch, one sentence each. */
    public List<String> jumps(int slot) {
        List<String> jumps = new ArrayList<>();
        for (WatchMarked mark : flight(slot)) {
            if (mark.is(WatchMark.GAP)) {
                jumps.add("The clocks of watch " + slot + "'s device came apart by "
                        + new FlightTime(Math.abs(mark.msOrZero())).seconds(1)
                        + " s while it ran: it slept, or its clock was set. Compare it with the others.");
            } else if (mark.is(WatchMark.RELOADED)) {
                jumps.add(
                        "The page of watch " + slot + " was loaded anew while it ran: the device's wall clock joins the"
                                + " two parts. Compare it with the others.");
            }
        }
        return jumps.stream().distinct().toList();
    }

    /** By how much the server's own moments of this reading's release and landing speak against it, ms; empty where they agree. */
    public Optional<Long> apart(ReadingTaken reading) {
        return all.stream()
                .filter(m -> m.is(WatchMark.APART) && reading.id().equals(m.about()))
                .map(WatchMarked::msOrZero)
                .findFirst();
    }

    /** Whether this watch has pressed for a release that had long been. */
    public boolean wasStartedLate(int slot) {
        return flight(slot).stream().anyMatch(m -> m.is(WatchMark.LATE_RELEASE));
    }

    /** Whether the last word of this watch is that the landing was a mistake. */
    public boolean fliesOn(int slot, List<ReadingTaken> readings) {
        return flight(slot).stream()
                .filter(m -> m.is(WatchMark.STILL_FLYING))
                .reduce((earlier, later) -> later)
                .filter(m ->
                        readings.stream().noneMatch(r -> r.slot() == slot && Objects.equals(r.corrects(), m.about())))
                .isPresent();
    }

    /** By the watch's own time: two devices may have had this place. */
    private List<WatchMarked> asFlown(int slot) {
        return flight(slot).stream()
                .sorted(Comparator.comparingLong(WatchMarked::msOrZero))
                .toList();
    }

    /** Since this watch's last release, without the contacts that were taken back. */
    private List<WatchMarked> flight(int slot) {
        List<WatchMarked> own = of(slot);
        int from = 0;
        for (int i = 0; i < own.size(); i++) {
            if (own.get(i).is(WatchMark.RELEASED) || own.get(i).is(WatchMark.NOT_RELEASED)) {
                from = i;
            }
        }
        Set<String> back = new HashSet<>();
        own.stream().filter(m -> m.is(WatchMark.TAKEN_BACK)).forEach(m -> back.add(String.valueOf(m.about())));
        return own.subList(from, own.size()).stream()
                .filter(m -> !back.contains(m.id()))
                .toList();
    }

    private List<WatchMarked> of(int slot) {
        return all.stream().filter(m -> m.slot() == slot).toList();
    }
}
