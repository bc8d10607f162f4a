package org.skeinday.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SpectatorPassTest {
    private static final JoinCode LINK = new JoinCode("ab".repeat(16));

    @Test
    void is_read_as_it_was_written_and_nothing_else_is_one() {
        SpectatorPass pass = new SpectatorPass(SpectatorPass.codeOf(LINK), "00112233445566ff");
        assertEquals(Optional.of(pass), SpectatorPass.read(pass.text()));
        for (String other :
                List.of("", "ab".repeat(16), pass.text() + "0", pass.text().toUpperCase(Locale.ROOT), "look--")) {
            assertEquals(Optional.empty(), SpectatorPass.read(other), other);
        }
    }

    @Test
    void its_code_is_of_one_link_alone_and_shows_nothing_of_it() {
        String code = SpectatorPass.codeOf(LINK);
        assertTrue(SpectatorPass.fits(LINK, code));
        assertFalse(LINK.text().contains(code));
        JoinCode next = new JoinCode("ac".repeat(16));
        assertNotEquals(code, SpectatorPass.codeOf(next));
        assertFalse(SpectatorPass.fits(next, code));
        assertFalse(SpectatorPass.fits(LINK, ""));
    }
}
