package org.skeinday.platform.folder;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.skeinday.platform.record.Backup;
import org.skeinday.platform.record.Damaged;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Backups without being asked: soon after the start, every hour, at the close, each only when something has changed
 * since the newest; {@value Backup#KEPT} are kept.
 * The first place is in the data folder and guards against a slip; a second one, a USB stick, guards against the laptop.
 */
public final class Backups {
    public static final String FOLDER = Backup.FOLDER;
    /** One line: where the second place is. */
    public static final String SECOND = "second-place";

    private static final Logger LOG = LoggerFactory.getLogger(Backups.class);
    private static final long HOUR_S = 3600;

    private final Path data;
    private final Clock clock;
    private volatile String trouble = "";

    public Backups(Path data, Clock clock) {
        this.data = data;
        this.clock = clock;
    }

    /** @param also done each time as well, when the backups are made */
    public void everyHour(ScheduledExecutorService on, Runnable also) {
        var unused = on.scheduleWithFixedDelay(
                () -> {
                    try {
                        now();
                        also.run();
                    } catch (RuntimeException e) { // one hour that fails must not be the last
                        LOG.warn("What is done every hour has failed", e);
                    }
                },
                1,
                HOUR_S,
                TimeUnit.SECONDS);
    }

    /** Why the last one failed, in words; empty when it did not. */
    public String trouble() {
        return trouble;
    }

    /** To every place, whatever becomes of the other. */
    public synchronized void now() {
        List<String> failed = new ArrayList<>();
        for (Path place : places(failed)) {
            try {
                Backup.Made made = Backup.makeIfChanged(data, place, clock.instant());
                Backup.prune(data, place);
                LOG.info("{} records are in {}", made.records(), made.folder().getFileName());
            } catch (Damaged e) {
                LOG.warn("No backup was made in {}: {}", place, e.getMessage());
                failed.add("No backup was made: " + e.getMessage());
            } catch (IOException | RuntimeException e) { // whatever it was, the next hour tries again
                LOG.warn("No backup could be made in {}", place, e);
                failed.add("No backup could be made in " + place + ". Is the disk full, or the stick gone?");
            }
        }
        trouble = String.join(" ", failed);
    }

    /** The first one always, whatever is written about the second. */
    private List<Path> places(List<String> failed) {
        List<Path> places = new ArrayList<>(List.of(data.resolve(FOLDER)));
        try {
            second(data).ifPresent(places::add);
        } catch (IOException e) {
            LOG.warn("The second place for backups cannot be read", e);
            failed.add(String.valueOf(e.getMessage()));
        }
        return places;
    }

    /**
     * Empty where none is named.
     *
     * @throws IOException when what is written there names no place, in a sentence that says what to do
     */
    public static Optional<Path> second(Path data) throws IOException {
        Path word = data.resolve(SECOND);
        try {
            String named = Files.exists(word) ? Files.readString(word).strip() : "";
            return named.isEmpty() ? Optional.empty() : Optional.of(Path.of(named));
        } catch (CharacterCodingException | InvalidPathException e) {
            throw new IOException("No backup is made in a second place: " + word + " names none. Name it again with"
                    + " backup --also.");
        }
    }
}
