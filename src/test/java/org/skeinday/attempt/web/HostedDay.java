package org.skeinday.attempt.web;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.skeinday.cli.Commands;
import org.skeinday.cli.Skeinday;

/** A hosted day of many entries in two divisions whose times came in from files: for the sheet and the wall. */
public final class HostedDay {
    private static final String[] BIRDS = {
        "Curlew",
        "Plover",
        "Avocet",
        "Dunlin",
        "Knot",
        "Whimbrel",
        "Redshank",
        "Godwit",
        "Sanderling",
        "Turnstone",
        "Ruff"
    };

    private HostedDay() {}

    /** Writes and takes in its files. @param folder of the record, made anew */
    public static Path into(Path folder, int entries, int attempts, long seed) throws IOException {
        Path files = Files.createDirectories(folder.resolveSibling(folder.getFileName() + "-files"));
        Files.writeString(
                files.resolve("event.csv"),
                "name,kind,day,hall,attempts,score,best of,timekeepers,round,to,minimum\n"
                        + "Mudflat Open,hosting,2026-05-09,Saltmarsh Hall," + attempts + ",sum,2,2,down,0.1,30\n");
        Files.writeString(files.resolve("rules.csv"), "event,repeats\nMudflat Open,1\n");
        var random = new Random(seed);
        var lines = new StringBuilder("event,entry,team,division\n");
        var flown = new StringBuilder("event,entry,attempt,state,released,landed,ended,official,reason,flown again\n");
        for (int i = 0; i < entries; i++) {
            String entry = BIRDS[i % BIRDS.length] + (i < BIRDS.length ? "" : " " + (i / BIRDS.length + 1));
            lines.append("Mudflat Open,").append(entry).append(",Team ").append(i / 2 + 1);
            lines.append(i % 3 == 0 ? ",juniors\n" : ",open\n");
            int tries = random.nextInt(attempts + 1);
            for (int t = 0; t < tries; t++) {
                flown.append(flight(entry, t + 1, random));
            }
        }
        Files.writeString(files.resolve("entries.csv"), lines);
        Files.writeString(files.resolve("attempts.csv"), flown);
        var said = new StringWriter();
        int code = Skeinday.run(
                new String[] {"import", files.toString(), "--data", folder.toString()},
                new PrintWriter(said, true),
                new PrintWriter(said, true),
                Commands.all());
        if (code != 0) {
            throw new IllegalStateException(said.toString());
        }
        return folder;
    }

    private static String flight(String entry, int number, Random random) {
        String at =
                String.format(java.util.Locale.ROOT, "2026-05-09 10:%02d:%02d", random.nextInt(59), random.nextInt(60));
        String times = at + "," + at + "," + at;
        return switch (random.nextInt(8)) {
            case 0 -> "Mudflat Open," + entry + "," + number + ",void," + times + ",,touched by a person,yes\n";
            case 1 -> "Mudflat Open," + entry + "," + number + ",void," + times + ",,thrown,\n";
            default ->
                "Mudflat Open," + entry + "," + number + ",closed," + times + "," + (20 + random.nextInt(200)) + "."
                        + random.nextInt(10) + ",,\n";
        };
    }
}
