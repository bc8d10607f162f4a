package org.skeinday.device.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.skeinday.device.JoinCode;
import org.skeinday.device.TypedCode;
import org.skeinday.platform.record.RandomHex;
import org.skeinday.platform.record.WholeFile;

/**
 * The codes in the data folder, so that what hangs on the wall holds over a restart: the link's in its own file, those that
 * are typed in another, the door's in its first line and the code of the day with its day in the second. What is no code is
 * made anew: an empty or half written one must never let anybody in.
 */
public final class KeptCodes implements JoinCodes {
    static final String FILE = "typed-codes";

    private final Path data;
    private final SecureRandom random;
    private final Clock clock;
    private final Runnable changed;
    private final boolean linkNew;
    private volatile JoinCode link;
    private volatile Typed typed;

    /** @param ofDay code and day, apart by a space; empty for none */
    private record Typed(String door, String ofDay) {
        String text() {
            return door + "\n" + (ofDay.isEmpty() ? "" : ofDay + "\n");
        }
    }

    /**
     * Reads what is kept.
     *
     * @param servedBefore whether devices may have joined here: then a missing link was lost
     * @param changed called after other codes were made
     */
    public KeptCodes(Path data, boolean servedBefore, Clock clock, SecureRandom random, Runnable changed)
            throws IOException {
        this.data = data;
        this.random = random;
        this.clock = clock;
        this.changed = changed;
        KeptJoinCode kept = KeptJoinCode.in(data, servedBefore, () -> RandomHex.of(random));
        this.link = kept.code();
        this.linkNew = kept.lost();
        String text = text();
        this.typed = read(text);
        if (!typed.text().equals(text)) {
            write(typed);
        }
    }

    private String text() throws IOException {
        Path file = data.resolve(FILE);
        return Files.exists(file) ? new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1) : ""; // any byte
    }

    private Typed read(String text) {
        List<String> lines = Arrays.asList(text.split("\n", -1));
        String ofDay = lines.size() > 1 ? lines.get(1) : "";
        boolean whole = ofDay.matches("\\S{6} \\d{4}-\\d{2}-\\d{2}")
                && TypedCode.read(ofDay.substring(0, TypedCode.SIGNS)).isPresent();
        return new Typed(TypedCode.read(lines.get(0)).orElseGet(this::fresh), whole ? ofDay : "");
    }

    private String fresh() {
        return TypedCode.fresh(random::nextInt);
    }

    /** Whether the link was lost and this start made another. */
    public boolean isLinkNew() {
        return linkNew;
    }

    @Override
    public JoinCode link() {
        return link;
    }

    @Override
    public String typed() {
        return typed.door();
    }

    @Override
    public Optional<String> ofDay() {
        String[] codeAndDay = typed.ofDay().split(" ", 2);
        return codeAndDay.length == 2 && codeAndDay[1].equals(today()) ? Optional.of(codeAndDay[0]) : Optional.empty();
    }

    private String today() {
        return LocalDate.now(clock).toString();
    }

    @Override
    public synchronized void renew() throws IOException {
        keep(new Typed(fresh(), ""));
        link = KeptJoinCode.another(data, () -> RandomHex.of(random));
        changed.run();
    }

    @Override
    public synchronized void handOut() throws IOException {
        keep(new Typed(typed.door(), fresh() + " " + today()));
        changed.run();
    }

    /** Written first: a code that was told holds after a pulled plug too. */
    private void keep(Typed codes) throws IOException {
        write(codes);
        typed = codes;
    }

    private void write(Typed codes) throws IOException {
        WholeFile.write(data.resolve(FILE), codes.text());
    }
}
