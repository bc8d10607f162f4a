package org.skeinday.dayplan.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.skeinday.dayplan.Planner;

/**
 * Where the solver's native part is unpacked: in the data folder, emptied at each start, so that no copies pile up in the
 * system's folder for temporary files. Unpacked with the first plan that is asked for: a day without one starts sooner.
 */
public final class SolverFolder {
    private final Path folder;

    private SolverFolder(Path folder) {
        this.folder = folder;
    }

    public static SolverFolder in(Path data) throws IOException {
        Path folder = data.resolve("solver");
        if (Files.isDirectory(folder)) {
            List<Path> old;
            try (Stream<Path> all = Files.walk(folder)) {
                old = all.sorted(Comparator.reverseOrder()).toList();
            }
            for (Path one : old) {
                Files.deleteIfExists(one);
            }
        }
        return new SolverFolder(folder);
    }

    /** Further calls do nothing. @throws org.skeinday.dayplan.SolverMissing when it does not run here */
    public void load() {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Planner.loadSolver(folder.toString());
    }
}
