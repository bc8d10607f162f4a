package org.skeinday.device.web;

import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.skeinday.device.Device;
import org.skeinday.device.EarlierToken;
import org.skeinday.device.TokenHash;
import org.skeinday.device.store.DeviceStore;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.ActStore;

/**
 * Whose a token is. An answer may be lost on its way: so the token before the last one serves, and a first joining can be
 * repeated, until the device is heard with the token it was given, and for a day at most.
 */
public final class Sessions {
    private static final Pattern TOKEN = Pattern.compile("[0-9a-f]{32}");
    private static final long DAY_MS = 24 * 3_600_000L;

    private final Known known;
    private final Clock clock;
    private final Set<String> heard = ConcurrentHashMap.newKeySet(); // hashes; as many as there were joinings

    /**
     * Where devices are kept.
     *
     * @param ofToken the device that holds a token now
     * @param ofEarlier the device that held it before
     * @param ofJoining the device that joined with a number of its own
     * @param ofEnded of a device that was ended, the hash of the join link's token then
     */
    public record Known(
            Function<String, Optional<Device>> ofToken,
            Function<String, Optional<EarlierToken>> ofEarlier,
            Function<String, Optional<EarlierToken>> ofJoining,
            Function<String, Optional<String>> ofEnded) {
        /** Those of the record. */
        public static Known in(ActStore record, KnownTokens tokens) {
            return new Known(
                    ofOurs(tokens::ofToken),
                    ofOurs(token -> record.read((Tx tx) -> DeviceStore.ofEarlier(tx, token))),
                    ofOurs(number -> record.read((Tx tx) -> DeviceStore.ofJoining(tx, number))),
                    ofOurs(token -> record.read((Tx tx) -> DeviceStore.endedLinkHash(tx, token))));
        }

        /** What cannot be a token is nobody's, and the record is not read for it. */
        private static <T> Function<String, Optional<T>> ofOurs(Function<String, Optional<T>> read) {
            return token -> TOKEN.matcher(token).matches() ? read.apply(token) : Optional.empty();
        }
    }

    public Sessions(Known known, Clock clock) {
        this.known = known;
        this.clock = clock;
    }

    /** The device that shows this token; empty when unknown, ended, or followed by another that has come. */
    public Optional<Device> ofToken(String token) {
        Optional<Device> now = known.ofToken().apply(token);
        if (now.isPresent()) {
            heard.add(TokenHash.of(token));
            return now;
        }
        return known.ofEarlier().apply(token).filter(this::isWaiting).map(EarlierToken::device);
    }

    /** Id of the device that joined with this number and was never heard since: this is the same one again. */
    public Optional<String> repeated(String number) {
        return known.ofJoining()
                .apply(number)
                .filter(this::isWaiting)
                .map(earlier -> earlier.device().id());
    }

    /** Of a device that was ended and shows its token still: the hash of the join link's token at that moment. */
    Optional<String> endedLinkHash(String token) {
        return known.ofEnded().apply(token);
    }

    private boolean isWaiting(EarlierToken token) {
        return !heard.contains(token.currentHash()) && clock.millis() - token.changedAtMs() <= DAY_MS;
    }
}
