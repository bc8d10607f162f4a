package org.skeinday.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.DayFiles;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** The commands that carry files into a record and out of it. */
final class ExchangeCommands {
    private ExchangeCommands() {}

    @Command(
            name = "import",
            description = "Takes a folder of CSV files in: all of it or nothing.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  import my-files --data my-season"})
    static final class Import extends Commands.OnFolder {
        private final Clock clock;
        private final SecureRandom random;

        @Parameters(
                paramLabel = "DIR",
                description =
                        "the folder with event.csv, entries.csv, motors.csv …, or one workbook.xlsx or bundle.json")
        Path dir = Path.of(".");

        private static final int LINE = 60;

        @Option(names = "--json", description = "one JSON object: rows by file, or every error with its place")
        boolean json;

        Import(Clock clock, SecureRandom random) {
            this.clock = clock;
            this.random = random;
        }

        @Override
        public Integer call() throws Exception {
            if (!Files.isDirectory(dir) && !OneFile.isOne(dir)) {
                throw new ParameterException(spec.commandLine(), "There is no folder " + dir.toAbsolutePath());
            }
            var texts = Files.isDirectory(dir) ? DayFolder.read(dir) : OneFile.read(dir);
            PrintWriter err = spec.commandLine().getErr();
            Exchange.Taken taken =
                    Exchange.take(makeable(folder("skeinday")), texts, 0, clock, random, words -> said(err, words));
            if (OneFile.isOne(dir)) {
                taken = taken.inside(String.valueOf(dir.getFileName()));
            }
            if (json) {
                out().println(ExchangeJson.of(taken));
            } else if (taken.errors().isEmpty()) {
                taken.rows().forEach((file, rows) -> out().println(file + ": " + rows));
                out().println("Taken in as record " + taken.n() + ".");
            } else {
                err.println("Nothing was taken.");
                CellError.told(taken.errors()).forEach(err::println);
            }
            return taken.errors().isEmpty() ? 0 : 2;
        }

        /** One line that is written over, as long as it takes. */
        private static void said(PrintWriter err, String words) {
            if (!words.isEmpty()) {
                err.print("\r" + words + " ".repeat(Math.max(0, LINE - words.length())) + "\r");
                err.flush();
            }
        }
    }

    @Command(
            name = "export",
            description = "Writes the record as the CSV files that import takes, and results.csv; or a part of it.",
            mixinStandardHelpOptions = true,
            footer = {"", "Example:", "  export files-out --data my-season"})
    static final class Export extends Commands.OnFolder {
        private final Clock clock;

        @Parameters(
                paramLabel = "DIR",
                description =
                        "the folder to write (new, empty, or of an earlier export), or one workbook.xlsx or bundle.json")
        Path dir = Path.of(".");

        @Option(names = "--json", description = "one JSON object: rows by file")
        boolean json;

        @ArgGroup
        TakenOut.@Nullable Choice choice;

        Export(Clock clock) {
            this.clock = clock;
        }

        @Override
        public Integer call() throws Exception {
            Path folder = existing(folder("skeinday"));
            TakenOut.Choice what = choice == null ? new TakenOut.Choice() : choice;
            if (what.tables && OneFile.isBundle(dir)) {
                throw new ParameterException(
                        spec.commandLine(), "Tables are written to a folder or a workbook, not to a bundle: name one");
            }
            DayFiles.Written written = Exchange.write(folder, what, clock);
            if (OneFile.isOne(dir)) {
                OneFile.write(dir, what.about(), written.texts());
            } else {
                DayFolder.write(dir, written.texts());
            }
            if (json) {
                out().println(ExchangeJson.of(written, dir));
            } else {
                written.rows().forEach((file, rows) -> out().println(file + ": " + rows));
                out().println("Written to " + dir + ".");
            }
            return 0;
        }
    }
}
