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
import java.util.regex.Pattern;
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

    private static final String AMONG_OTHERS = "skeinday-among-others.txt";

    /** Names of all that the program itself puts into a data folder, beside {@link #OWN}. */
    private static final Pattern MADE =
            Pattern.compile("(skeinday[-.].*|journal\\.jsonl|torn-after-.*|people(-set-aside-.*)?"
                    + "\\.json|lock|running-at|database-.*|copy-being-made.*|record-format|join-code|typed-codes|port|host|joined-at"
                    + "|second-place|set-aside-.*)(\\.part|" + Pattern.quote(WholeFile.ASIDE) + ")?");

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
        boolean amongOthers = isAmongOthers(data);
        if (!amongOthers) {
            tighten(data);
        }
        for (Path inside : list(data)) {
            if (amongOthers) {
                tightenFile(inside);
            } else if (Files.isRegularFile(inside, LinkOption.NOFOLLOW_LINKS)) {
                tighten(inside);
            } else if (Files.isDirectory(inside, LinkOption.NOFOLLOW_LINKS) && isOwn(inside)) {
                deep(inside);
            }
        }
    }

    /**
     * Before a folder becomes a data folder: where things of others are in it (somebody named a home folder), a file says
     * so from then on, and nothing but the program's own files is ever closed to others there.
     */
    static void noteOthers(Path data) throws IOException {
        boolean used = Stream.of(Journal.FILE, FolderMark.FILE, ActStore.DATABASE + ".mv.db")
                .anyMatch(file -> Files.exists(data.resolve(file)));
        if (!used && list(data).stream().anyMatch(inside -> !isMade(inside))) {
            WholeFile.write(
                    data.resolve(AMONG_OTHERS),
                    "Skeinday keeps its data here among files of others: who may read those is left as it is.\n");
        }
    }

    /** Whether things of others were in this folder before. */
    public static boolean isAmongOthers(Path data) {
        return Files.exists(data.resolve(AMONG_OTHERS));
    }

    /** Whether this is a file or folder of a name that the program gives. */
    private static boolean isMade(Path inside) {
        String name = inside.getFileName().toString();
        return OWN.contains(name) || MADE.matcher(name).matches();
    }

    private static boolean isOwn(Path folder) {
        String name = folder.getFileName().toString();
        return OWN.contains(name) || name.startsWith(Backup.SET_ASIDE);
    }

    /** Folders there may be others' of the same name; those that the program makes are closed from the first. */
    private static void tightenFile(Path inside) {
        if (Files.isRegularFile(inside, LinkOption.NOFOLLOW_LINKS) && isMade(inside)) {
            tighten(inside);
        }
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
