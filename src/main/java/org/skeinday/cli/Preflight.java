package org.skeinday.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.skeinday.device.web.Addresses;
import org.skeinday.platform.folder.Backups;
import org.skeinday.platform.folder.DataFolder;
import org.skeinday.platform.record.Backup;
import org.skeinday.platform.record.BackupCheck;
import org.skeinday.platform.record.Damaged;

/** What can be known the night before of the laptop that will keep the record. */
final class Preflight {
    private static final long FREE_BYTES = 1L << 30;
    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("EEEE, d MMMM uuuu, HH:mm", Locale.ENGLISH);

    private final Path folder;
    private final Clock clock;
    private final Addresses addresses;
    private final List<Look> looks = new ArrayList<>();

    /** @param good whether nothing needs to be done about it */
    record Look(boolean good, String words) {}

    Preflight(Path folder, Clock clock, Addresses addresses) {
        this.folder = folder;
        this.clock = clock;
        this.addresses = addresses;
    }

    /** Changes nothing but a file that is written and removed again. */
    List<Look> looks() throws IOException {
        disk();
        say(
                true,
                "The clock says " + CLOCK.format(clock.instant().atZone(clock.getZone())) + " (" + clock.getZone()
                        + "). Compare it with a watch: windows are kept by it.");
        memory();
        sleep();
        network();
        backups();
        return List.copyOf(looks);
    }

    private void say(boolean good, String words) {
        looks.add(new Look(good, words));
    }

    private void disk() throws IOException {
        Path there = folder.toAbsolutePath();
        while (!Files.exists(there) && there.getParent() != null) {
            there = there.getParent();
        }
        try {
            Files.delete(Files.createTempFile(there, "preflight", ".tmp"));
            long free = Files.getFileStore(there).getUsableSpace();
            say(
                    free >= FREE_BYTES,
                    "The data folder " + folder + " can be written; " + (free >> 20) + " MB are free"
                            + (free >= FREE_BYTES ? "." : ": make room, a GB is well enough."));
        } catch (IOException e) {
            say(
                    false,
                    "The data folder " + folder
                            + " cannot be written: choose another with --data, or ask for the right.");
        }
    }

    private void memory() {
        long mb = Runtime.getRuntime().maxMemory() >> 20;
        say(
                mb >= 180,
                "Java " + Runtime.version().feature() + " may use " + mb + " MB"
                        + (mb >= 180 ? "." : ": start it with -Xmx192m or more."));
    }

    /** Only what can be read: elsewhere the coach looks. */
    private void sleep() {
        Path login = Path.of("/etc/systemd/logind.conf");
        String lid = "";
        try {
            if (Files.isReadable(login)) {
                lid = Files.readAllLines(login).stream()
                        .map(String::strip)
                        .filter(line -> line.startsWith("HandleLidSwitch="))
                        .reduce((a, b) -> b)
                        .orElse("");
            }
        } catch (IOException e) {
            lid = "";
        }
        boolean stays = lid.equals("HandleLidSwitch=ignore");
        say(
                stays,
                stays
                        ? "A closed lid does not put the laptop to sleep."
                        : "Whether a closed lid or idle time puts the laptop to sleep could not be read: set both to never in the"
                                + " system's settings, plug it in, and leave the lid open.");
    }

    private void network() {
        List<String> found = addresses.forTablets();
        say(
                !found.isEmpty(),
                found.isEmpty()
                        ? "There is no network now. At the hall join the team's own router: the hall's Wi-Fi often keeps devices apart."
                        : "Tablets will find the laptop at " + String.join(" or ", found)
                                + " in this network. The firewall must let Java answer: try one tablet today.");
    }

    private void backups() throws IOException {
        Optional<Path> newest = Backup.newest(folder, folder.resolve(Backups.FOLDER));
        if (newest.isEmpty()) {
            say(
                    !DataFolder.holdsRecord(folder),
                    "There is no backup yet" + (DataFolder.holdsRecord(folder) ? ": run backup." : ", and no record."));
        } else {
            Path last = newest.get();
            boolean whole = isWhole(last);
            say(
                    whole,
                    "The last backup is " + BackupCommands.ago(age(last))
                            + (whole ? ", and whole." : " and NOT whole: run backup."));
        }
        secondPlace();
    }

    private void secondPlace() {
        Optional<Path> second;
        try {
            second = Backups.second(folder);
        } catch (IOException e) {
            say(false, String.valueOf(e.getMessage()));
            return;
        }
        boolean there = second.filter(Files::isDirectory).isPresent();
        say(
                there,
                second.isEmpty()
                        ? "Backups stay on this one disk: name a USB stick with backup --also."
                        : there
                                ? "Backups go to " + second.get() + ", too."
                                : "The second place " + second.get() + " is not there: plug the stick in.");
    }

    private Duration age(Path backup) throws IOException {
        return Duration.between(Files.getLastModifiedTime(backup).toInstant(), clock.instant());
    }

    private static boolean isWhole(Path backup) throws IOException {
        try {
            BackupCheck.check(backup);
            return true;
        } catch (Damaged e) {
            return false;
        }
    }
}
