package org.skeinday.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.device.web.Addresses;
import org.skeinday.platform.folder.Backups;
import org.skeinday.platform.record.Backup;
import org.skeinday.platform.record.Restoring;
import org.skeinday.platform.record.WholeFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Commands that keep the record safe: backup, restore, preflight. */
final class BackupCommands {
    private BackupCommands() {}

    @Command(
            name = "backup",
            description = "Copies the record, also while the server runs: the journal, checked, and the people.",
            mixinStandardHelpOptions = true,
            footer = {
                "",
                "Example:",
                "  backup /media/stick --data my-season",
                "  backup --also /media/stick     (from now on every backup goes there, too)"
            })
    static final class BackUp extends Commands.OnFolder {
        @Parameters(
                paramLabel = "PLACE",
                arity = "0..1",
                description = "the folder to make it in; backups in the data folder when left out")
        @Nullable
        Path place;

        @Option(names = "--also", description = "a second place for every automatic backup, for example a USB stick")
        @Nullable
        Path also;

        @Override
        public Integer call() throws Exception {
            Path folder = existing(folder("skeinday"));
            if (also != null) {
                if (!Files.isDirectory(also)) {
                    throw new ParameterException(spec.commandLine(), "There is no folder " + also.toAbsolutePath());
                }
                WholeFile.write(folder.resolve(Backups.SECOND), also.toAbsolutePath() + "\n");
                out().println("Backups are made in " + also + ", too.");
            }
            Path where = place != null ? place : also != null ? also : folder.resolve(Backups.FOLDER);
            Backup.Made made = Backup.make(folder, where, Clock.systemUTC().instant());
            out().println(made.records() + " records to " + made.folder());
            return 0;
        }
    }

    @Command(
            name = "restore",
            description = "Puts a backup in the place of a record, which is set aside and never overwritten.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  restore my-season/backups/backup-20260509-081500 --data my-season"})
    static final class Restore extends Commands.OnFolder {
        @Parameters(paramLabel = "BACKUP", description = "the folder of one backup")
        Path backup = Path.of(".");

        @Override
        public Integer call() throws Exception {
            if (!Files.isDirectory(backup)) {
                throw new ParameterException(spec.commandLine(), "There is no folder " + backup.toAbsolutePath());
            }
            Path folder = makeable(folder("skeinday"));
            long joinedAgain = EndedSince.count(folder, backup);
            Backup.Made made =
                    Restoring.restore(backup, folder, Clock.systemUTC().instant());
            out().println(made.records() + " records are in " + folder
                    + ". What was there is in its set-aside folder.");
            if (joinedAgain > 0) {
                out().println("Devices that were ended after this backup and are joined again: " + joinedAgain
                        + ". End them on the page Devices before the day goes on.");
            }
            return 0;
        }
    }

    @Command(
            name = "preflight",
            description = "The night before: looks at disk, clock, sleep, network and backups, and says what to mend.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  preflight --data my-season"})
    static final class PreflightCheck extends Commands.OnFolder {
        @Override
        public Integer call() throws IOException {
            Path folder = folder("skeinday");
            List<Preflight.Look> looks = new Preflight(folder, Clock.systemDefaultZone(), new Addresses()).looks();
            looks.forEach(look -> out().println((look.good() ? "good   " : "LOOK   ") + look.words()));
            boolean good = looks.stream().allMatch(Preflight.Look::good);
            out().println(good ? "Ready for the day." : "Mend what says LOOK, or know about it.");
            return 0;
        }
    }

    /** How long ago, for people. */
    static String ago(Duration since) {
        return since.toHours() < 48 ? since.toHours() + " h ago" : since.toDays() + " days ago";
    }
}
