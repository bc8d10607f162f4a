package org.skeinday.device.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.skeinday.device.JoinCode;
import org.skeinday.device.TypedCode;
import org.skeinday.platform.record.RandomHex;
import org.skeinday.platform.record.WholeFile;

/**
 * The codes in the data folder, so that what hangs on the wall holds over a restart: the link's in its own file, those that
 * are typed in another, the door's in its first line, the code of the day with its day in the second and in the third the
 * forms that made other codes, so that one that is sent again makes none. What is no code is made anew: an empty or half
 * written one must never let anybody in.
 */
public final class KeptCodes implements JoinCodes {
    static final String FILE = "typed-codes";

    /** As many forms are told again from their repeats: those of a day in which a device is ended every few minutes. */
    private static final int ACTS = 100;

    private final Path data;
    private final SecureRandom random;
    private final Clock clock;
    private final Runnable changed;
    private final boolean linkNew;
    private volatile JoinCode link;
    private volatile Typed typed;

    /** @param ofDay code and day, apart by a space; empty for none @param acts that made other codes, the newest last */
    private record Typed(String door, String ofDay, List<String> acts) {
        String text() {
            return door + "\n" + ofDay + "\n" + String.join(" ", acts) + "\n";
        }

        List<String> actsWith(String act) {
            List<String> more = new ArrayList<>(acts);
            more.add(act);
            return List.copyOf(more.subList(Math.max(0, more.size() - ACTS), more.size()));
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
        List<String> acts = lines.size() > 2
                ? Arrays.stream(lines.get(2).split(" "))
                        .filter(act -> act.matches("[0-9a-f]{32}"))
                        .toList()
                : List.of();
        return new Typed(TypedCode.read(lines.get(0)).orElseGet(this::fresh), whole ? ofDay : "", acts);
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

    /**
     * The old ones stop before anything is written: they do so too where the disk takes no more, and the form's
     * repeat makes others. The form is noted with the last of both files: killed in between, its
     * repeat makes all of them new.
     */
    @Override
    public synchronized void renew(String act) throws IOException {
        if (typed.acts().contains(act)) {
            return;
        }
        link = new JoinCode(RandomHex.of(random));
        List<String> acts = typed.actsWith(act);
        typed = new Typed(fresh(), "", typed.acts());
        try {
            KeptJoinCode.keep(data, link);
            keep(new Typed(typed.door(), "", acts));
        } catch (IOException e) {
            forgetKept(); // it may hold old ones, which the next start would read
            throw e;
        } finally {
            changed.run();
        }
    }

    /** A disk that takes no more gives back all the same; the next start makes new ones and says so. */
    private void forgetKept() throws IOException {
        Files.deleteIfExists(data.resolve(KeptJoinCode.FILE));
        Files.deleteIfExists(data.resolve(FILE));
    }

    @Override
    public synchronized void handOut(String act) throws IOException {
        if (typed.acts().contains(act)) {
            return;
        }
        keep(new Typed(typed.door(), fresh() + " " + today(), typed.actsWith(act)));
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
