package org.skeinday.attempt.store;

import static org.skeinday.platform.db.schema.Tables.ATTEMPT;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_JUDGED;
import static org.skeinday.platform.db.schema.Tables.ATTEMPT_NOTE;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;
import org.skeinday.attempt.Aloft;
import org.skeinday.attempt.Contacts;
import org.skeinday.attempt.FlightJudged;
import org.skeinday.attempt.Marks;
import org.skeinday.evidence.FlightEvidence;
import org.skeinday.evidence.Source;
import org.skeinday.evidence.ValueMarks;
import org.skeinday.evidence.WhatCounts;

/** What an attempt is worth as evidence, from its row: what people said of it, its marks of contacts, its card. */
final class JudgedFlights {
    private JudgedFlights() {}

    private static final String BROKE = "its motor broke in the air";

    /**
     * @param touched what its watches marked, null when they marked no contact
     * @param broke whether its motor broke in the air: then somebody says what the flight is worth
     */
    static FlightEvidence of(Record r, @Nullable Marks touched, ValueMarks marks, boolean broke) {
        Aloft aloft = AloftStore.value(r.into(ATTEMPT));
        Optional<FlightJudged> said = said(r);
        int contacts = contacts(r.get(ATTEMPT_NOTE.CONTACTS), touched, aloft);
        boolean judged = said.filter(word -> word.decidesOfContact(contacts)).isPresent();
        String reason = said.map(FlightJudged::reason).orElse("");
        String contact = Stream.of(contact(r.get(ATTEMPT_NOTE.CONTACTS), touched, aloft), broke ? BROKE : "")
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining("; "));
        return new FlightEvidence(
                judged,
                WhatCounts.flight(judged, reason, aloft.saysNothing().orElse(""), contact),
                contact,
                contacts,
                contactAt(said.map(FlightJudged::contactMs).orElse(null), touched),
                Boolean.TRUE.equals(r.get(ATTEMPT_NOTE.FROM_PAPER)) ? marks.cameAs(Source.CARD) : marks,
                List.of());
    }

    private static Optional<FlightJudged> said(Record r) {
        String attempt = r.get(ATTEMPT_JUDGED.ATTEMPT_ID);
        return attempt == null
                ? Optional.empty()
                : Optional.of(new FlightJudged(
                        attempt,
                        r.get(ATTEMPT_JUDGED.REASON),
                        r.get(ATTEMPT_JUDGED.CONTACT_MS),
                        r.get(ATTEMPT_JUDGED.OF_CONTACT),
                        r.get(ATTEMPT_JUDGED.CONTACTS)));
    }

    /** As somebody wrote it, else as a watch marked it, else as the captain saw it. */
    private static String contact(@Nullable String noted, @Nullable Marks touched, Aloft aloft) {
        if (noted != null && Contacts.isContact(noted)) {
            return noted;
        }
        String marked = touched == null ? "" : touched.contacts();
        return marked.isEmpty() && aloft.caughtMs() != null ? aloft.words() : marked;
    }

    private static int contacts(@Nullable String noted, @Nullable Marks touched, Aloft aloft) {
        List<Long> seen = new ArrayList<>(touched == null ? List.of() : touched.contactsMs());
        Optional.ofNullable(aloft.caughtMs()).ifPresent(seen::add);
        return Contacts.known(noted, seen);
    }

    private static @Nullable Duration contactAt(@Nullable Long toldMs, @Nullable Marks touched) {
        Long ms = toldMs != null || touched == null
                ? toldMs
                : touched.firstContactMs().orElse(null);
        return ms == null ? null : Duration.ofMillis(ms);
    }
}
