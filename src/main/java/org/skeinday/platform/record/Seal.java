package org.skeinday.platform.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;

/**
 * The SHA-256 of the database's file as it was closed. H2 was seen to hand out altered rows of a file with a flipped
 * bit, and to keep rows of a transaction that a kill had cut short: a database whose bytes are not the ones that were
 * closed in good order is built anew from the journal.
 */
final class Seal {
    static final String FILE = "database-seal";

    private Seal() {}

    /** Whether the file is the very one that was sealed. Breaks the seal: from here on the file may change. */
    static boolean broken(Path folder, Path database) throws IOException {
        Path seal = folder.resolve(FILE);
        if (!Files.exists(seal)) {
            return true;
        }
        byte[] kept = Files.readAllBytes(seal);
        Files.delete(seal);
        return !Files.exists(database) || !sum(database).equals(new String(kept, StandardCharsets.US_ASCII));
    }

    /** To be called once the database is closed, and only when it closed in good order. */
    static void put(Path folder, Path database) throws IOException {
        String sum = sum(database);
        try (FileChannel file = FileChannel.open(database, StandardOpenOption.WRITE)) {
            file.force(true); // a seal must never be on the disk before what it seals
        }
        WholeFile.write(folder.resolve(FILE), sum);
    }

    /** SHA-256 of a file's bytes, in hexadecimal. */
    static String sum(Path database) throws IOException {
        MessageDigest digest = Sha.digest();
        try (InputStream in = new DigestInputStream(Files.newInputStream(database), digest)) {
            byte[] block = new byte[1 << 16];
            while (in.read(block) >= 0) {
                // the digest hears every byte
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }
}
