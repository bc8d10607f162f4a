package org.skeinday.device.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import org.skeinday.device.JoinCode;
import org.skeinday.platform.record.WholeFile;

/**
 * The join code in the data folder, where devices that have joined before find it again.
 *
 * @param lost whether there was one, and it is gone, empty or cut: a new one was made in its place
 */
record KeptJoinCode(JoinCode code, boolean lost) {
    static final String FILE = "join-code";

    /**
     * The one that is kept, else a fresh one, kept from now on.
     *
     * @param servedBefore whether devices may have joined here: then a missing code was lost
     */
    static KeptJoinCode in(Path data, boolean servedBefore, Supplier<String> fresh) throws IOException {
        Path file = data.resolve(FILE);
        Optional<JoinCode> kept = read(file);
        if (kept.isPresent()) {
            return new KeptJoinCode(kept.get(), false);
        }
        boolean lost = servedBefore || Files.exists(file);
        return new KeptJoinCode(another(data, fresh), lost);
    }

    /** A fresh one in the place of what was there, kept before it is told. */
    private static JoinCode another(Path data, Supplier<String> fresh) throws IOException {
        JoinCode code = new JoinCode(fresh.get());
        keep(data, code);
        return code;
    }

    static void keep(Path data, JoinCode code) throws IOException {
        WholeFile.write(data.resolve(FILE), code.text());
    }

    private static Optional<JoinCode> read(Path file) throws IOException {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).strip(); // any byte is read
        return JoinCode.isCode(text) ? Optional.of(new JoinCode(text)) : Optional.empty();
    }
}
