package org.skeinday.platform.record;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryFlag;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Who may look into a data folder: its owner and nobody else, since names and codes are in it. Folders 700 and files 600
 * where the system knows such rights, an access list of the owner alone on Windows, which new files inherit.
 */
public final class OwnerOnly {
    private static final Logger LOG = LoggerFactory.getLogger(OwnerOnly.class);
    /** Folders in a data folder that are the program's own, with all that is in them. */
    private static final Set<String> OWN = Set.of(Backup.FOLDER, "logs", "solver");

    private static final Set<PosixFilePermission> OWNERS = PosixFilePermissions.fromString("rwx------");

    private OwnerOnly() {}

    /** Makes a folder that is not there yet. Rights of one that is there stay: whose it is, is not known here. */
    public static void makeFolder(Path folder) throws IOException {
        Path parent = folder.toAbsolutePath().getParent();
        if (Files.isDirectory(folder) || parent == null) {
            return;
        }
        Files.createDirectories(parent);
        try {
            Files.createDirectory(folder, rights(parent, "rwx------"));
        } catch (FileAlreadyExistsException e) {
            if (!Files.isDirectory(folder)) {
                throw e;
            }
        }
        tighten(folder);
    }

    /** Makes a file for writing; it must not be there. */
    static FileChannel create(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        return FileChannel.open(
                file,
                Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
                rights(folder == null ? file : folder, "rw-------"));
    }

    private static FileAttribute<?>[] rights(Path in, String rights) throws IOException {
        return Files.getFileStore(in).supportsFileAttributeView(PosixFileAttributeView.class)
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))}
                : new FileAttribute<?>[0];
    }

    /**
     * Takes from everybody but the owner what an older program, or a careless hand, has allowed: for a data folder, the
     * files in it and the program's own folders. Other folders that somebody keeps there, and links, are left alone.
     */
    public static void tightenAll(Path data) {
        tighten(data);
        for (Path inside : list(data)) {
            if (Files.isRegularFile(inside, LinkOption.NOFOLLOW_LINKS)) {
                tighten(inside);
            } else if (Files.isDirectory(inside, LinkOption.NOFOLLOW_LINKS) && isOwn(inside)) {
                deep(inside);
            }
        }
    }

    private static boolean isOwn(Path folder) {
        String name = folder.getFileName().toString();
        return OWN.contains(name) || name.startsWith(Backup.SET_ASIDE);
    }

    private static void deep(Path folder) {
        tighten(folder);
        for (Path inside : list(folder)) {
            if (Files.isDirectory(inside, LinkOption.NOFOLLOW_LINKS)) {
                deep(inside);
            } else if (!Files.isSymbolicLink(inside)) {
                tighten(inside);
            }
        }
    }

    private static List<Path> list(Path folder) {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.toList();
        } catch (IOException e) {
            LOG.warn("Who may read {} cannot be looked at: {}", folder.getFileName(), e.getMessage());
            return List.of();
        }
    }

    /** A folder of somebody else's, or a stick without rights, is used as it is: the log says so. */
    private static void tighten(Path path) {
        try {
            PosixFileAttributeView posix =
                    Files.getFileAttributeView(path, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
            if (posix != null) {
                ownersOf(posix);
                return;
            }
            AclFileAttributeView acl = Files.getFileAttributeView(path, AclFileAttributeView.class);
            if (acl != null) {
                acl.setAcl(List.of(all(acl, Files.isDirectory(path))));
            }
        } catch (IOException | UnsupportedOperationException e) {
            LOG.warn("Others may be able to read {}: {}", path.getFileName(), e.getMessage());
        }
    }

    /** The owner's own rights stay as they are: a folder that is closed for writing stays so. */
    private static void ownersOf(PosixFileAttributeView posix) throws IOException {
        Set<PosixFilePermission> now = posix.readAttributes().permissions();
        Set<PosixFilePermission> left = EnumSet.noneOf(PosixFilePermission.class);
        left.addAll(now);
        left.retainAll(OWNERS);
        if (left.size() < now.size()) {
            posix.setPermissions(left);
        }
    }

    private static AclEntry all(AclFileAttributeView acl, boolean folder) throws IOException {
        AclEntry.Builder entry = AclEntry.newBuilder()
                .setType(AclEntryType.ALLOW)
                .setPrincipal(acl.getOwner())
                .setPermissions(EnumSet.allOf(AclEntryPermission.class));
        return folder
                ? entry.setFlags(AclEntryFlag.FILE_INHERIT, AclEntryFlag.DIRECTORY_INHERIT)
                        .build()
                : entry.build();
    }
}
