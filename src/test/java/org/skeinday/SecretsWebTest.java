package org.skeinday;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.skeinday.device.JoinCode;
import org.skeinday.platform.http.PinHash;

/** A secret that was cut or emptied, by a kill or a careless hand, opens nothing: a new one is made and said. */
@Timeout(120)
class SecretsWebTest {
    @TempDir
    Path root;

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "0123456789abcdef", "0123456789ABCDEF0123456789ABCDEF", "\u0000"})
    void a_join_code_that_is_none_lets_nobody_in_and_another_is_made(String broken) throws Exception {
        Path code = Demo.into(root.resolve("day")).resolve("join-code");
        Files.writeString(code, broken);
        try (App app = Demo.startEmpty(root.resolve("day"))) {
            for (String sent : List.of(broken, broken.strip(), "")) {
                assertEquals(422, join(app, sent, 1), "sent '" + sent + "'");
            }
            assertTrue(app.invitation().isJoinCodeNew(), "it is said");
            String made = Files.readString(code);
            assertTrue(JoinCode.isCode(made), made.length() + " characters");
            assertTrue(app.joinLink().endsWith("#" + made));
            assertEquals(204, join(app, made, 2));
        }
    }

    @Test
    void a_code_is_kept_between_starts_and_one_that_is_gone_from_a_used_folder_is_said() throws Exception {
        Path day = root.resolve("day");
        String first;
        try (App app = Demo.startEmpty(day)) {
            first = app.joinLink();
            assertFalse(app.invitation().isJoinCodeNew(), "the first was not lost");
        }
        try (App app = Demo.startEmpty(day)) {
            assertEquals(code(first), code(app.joinLink()));
            assertFalse(app.invitation().isJoinCodeNew());
        }
        Files.delete(day.resolve("join-code"));
        try (App app = Demo.startEmpty(day)) {
            assertFalse(code(first).equals(code(app.joinLink())));
            assertTrue(app.invitation().isJoinCodeNew());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", ":", "00:", ":00", "zz:zz", "00112233445566778899aabbccddeeff:"})
    void nothing_fits_what_is_no_hash_of_a_pin(String broken) {
        assertFalse(PinHash.fits("", broken));
        assertFalse(PinHash.fits("123456", broken));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void once_it_serves_all_that_it_has_made_is_for_the_owner_alone() throws Exception {
        Path day = root.resolve("day");
        try (App app = Demo.startEmpty(day);
                Stream<Path> all = Files.walk(day)) {
            assertTrue(app.port() > 0);
            for (Path one : all.toList()) {
                String rights = PosixFilePermissions.toString(Files.getPosixFilePermissions(one));
                assertEquals(Files.isDirectory(one) ? "rwx------" : "rw-------", rights, one.toString());
            }
        }
    }

    private static String code(String link) {
        return link.substring(link.indexOf('#') + 1);
    }

    private static int join(App app, String token, long seed) throws Exception {
        return new Visitor(app.port(), "", seed)
                .form("/join", Map.of("token", token, "role", "captain", "person", ""))
                .statusCode();
    }
}
