package org.skeinday.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.skeinday.exchange.CellError;
import org.skeinday.exchange.FileText;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A file named on the command line. */
record CsvFile(String name, String text) {
    /** @throws ParameterException when there is no such file */
    static CsvFile read(CommandLine line, Path path) throws IOException {
        if (!Files.exists(path) || Files.isDirectory(path)) {
            throw new ParameterException(
                    line, Files.exists(path) ? path + " is a folder; name a file" : "There is no file " + path);
        }
        return new CsvFile(String.valueOf(path.getFileName()), FileText.decode(Files.readAllBytes(path)));
    }

    /** Says every error, one line each. @return the exit code for a bad value */
    static int say(CommandLine line, List<CellError> errors) {
        errors.forEach(error -> line.getErr().println(error.text().replaceAll("\\R", " ")));
        return 2;
    }
}
