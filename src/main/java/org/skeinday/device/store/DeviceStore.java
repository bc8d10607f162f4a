package org.skeinday.device.store;

import static org.skeinday.platform.db.schema.Tables.DEVICE;
import static org.skeinday.platform.db.schema.Tables.DEVICE_LAPTOP;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.impl.DSL;
import org.skeinday.device.Device;
import org.skeinday.device.DeviceAnswered;
import org.skeinday.device.DeviceChanged;
import org.skeinday.device.DeviceEnded;
import org.skeinday.device.DeviceJoined;
import org.skeinday.device.EarlierToken;
import org.skeinday.device.LaptopLent;
import org.skeinday.device.TokenHash;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.db.schema.tables.records.DeviceRecord;
import org.skeinday.platform.record.FactKind;

/** Devices in tables: facts in, devices out. */
public final class DeviceStore {
    private DeviceStore() {}

    public static List<FactKind> factKinds() {
        return List.of(
                FactKind.of("device.joined", DeviceJoined.class, DeviceStore::joined),
                FactKind.of("device.changed", DeviceChanged.class, DeviceStore::changed),
                FactKind.of("device.answered", DeviceAnswered.class, DeviceStore::answered),
                FactKind.of("device.ended", DeviceEnded.class, DeviceStore::ended),
                FactKind.of("laptop.lent", LaptopLent.class, DeviceStore::lent));
    }

    private static void joined(Tx tx, DeviceJoined fact) {
        tx.sql()
                .insertInto(DEVICE)
                .set(DEVICE.ID, fact.device())
                .set(DEVICE.TOKEN_HASH, fact.tokenHash())
                .set(DEVICE.PERSON, fact.person())
                .set(DEVICE.ROLE, fact.role())
                .set(DEVICE.JOINED_AT_MS, fact.atMs())
                .set(DEVICE.JOINING_HASH, fact.joiningHash())
                .set(DEVICE.ASKED_ROLE, fact.asked())
                .execute();
    }

    private static void changed(Tx tx, DeviceChanged fact) {
        tx.sql()
                .update(DEVICE)
                .set(DEVICE.PERSON, fact.person())
                .set(DEVICE.ROLE, fact.role())
                .set(DEVICE.TOKEN_HASH, fact.tokenHash())
                .set(DEVICE.EARLIER_HASH, fact.earlierHash())
                .set(DEVICE.EARLIER_ROLE, fact.earlierRole())
                .set(DEVICE.CHANGED_AT_MS, fact.atMs())
                .set(DEVICE.ASKED_ROLE, fact.asked())
                .setNull(DEVICE.ALLOWED_ROLE)
                .where(DEVICE.ID.eq(fact.device()))
                .execute();
    }

    private static void ended(Tx tx, DeviceEnded fact) {
        tx.sql()
                .update(DEVICE)
                .set(DEVICE.ENDED_AT_MS, fact.atMs())
                .set(DEVICE.ENDED_LINK_HASH, fact.linkHash())
                .where(DEVICE.ID.eq(fact.device()))
                .execute();
    }

    private static void answered(Tx tx, DeviceAnswered fact) {
        tx.sql()
                .update(DEVICE)
                .setNull(DEVICE.ASKED_ROLE)
                .set(DEVICE.ALLOWED_ROLE, fact.role().isEmpty() ? null : fact.role())
                .where(DEVICE.ID.eq(fact.device()))
                .execute();
    }

    private static void lent(Tx tx, LaptopLent fact) {
        tx.sql()
                .mergeInto(DEVICE_LAPTOP)
                .using(DSL.selectOne())
                .on(DEVICE_LAPTOP.ID.eq(1))
                .whenMatchedThenUpdate()
                .set(DEVICE_LAPTOP.LENT, fact.lent())
                .set(DEVICE_LAPTOP.AT_MS, fact.atMs())
                .whenNotMatchedThenInsert(DEVICE_LAPTOP.ID, DEVICE_LAPTOP.LENT, DEVICE_LAPTOP.AT_MS)
                .values(1, fact.lent(), fact.atMs())
                .execute();
    }

    /** Whether the students hold the laptop. */
    public static boolean isLaptopLent(Tx tx) {
        return tx.sql().fetchExists(DEVICE_LAPTOP, DEVICE_LAPTOP.LENT.isTrue());
    }

    /** The device that had this token before it was given the one it has now, unless it was ended. */
    public static Optional<EarlierToken> ofEarlier(Tx tx, String token) {
        return tx.sql()
                .selectFrom(DEVICE)
                .where(DEVICE.EARLIER_HASH.eq(TokenHash.of(token)))
                .and(DEVICE.ENDED_AT_MS.isNull())
                .limit(1)
                .fetchOptional(row ->
                        new EarlierToken(device(row, row.getEarlierRole()), row.getTokenHash(), row.getChangedAtMs()));
    }

    /** The device that joined with this number of its own, unless it was ended; with its token's hash. */
    public static Optional<EarlierToken> ofJoining(Tx tx, String number) {
        return tx.sql()
                .selectFrom(DEVICE)
                .where(DEVICE.JOINING_HASH.eq(TokenHash.of(number)))
                .and(DEVICE.ENDED_AT_MS.isNull())
                .limit(1)
                .fetchOptional(
                        row -> new EarlierToken(device(row, row.getRole()), row.getTokenHash(), row.getJoinedAtMs()));
    }

    /** The device that holds this token, unless it was ended. */
    public static Optional<Device> ofToken(Tx tx, String token) {
        return open(tx, DEVICE.TOKEN_HASH.eq(TokenHash.of(token))).stream().findFirst();
    }

    public static Optional<Device> ofId(Tx tx, String device) {
        return open(tx, DEVICE.ID.eq(device)).stream().findFirst();
    }

    /** A device that joined once, ended or not. */
    public static Optional<Device> everOfId(Tx tx, String device) {
        return all(tx, DEVICE.ID.eq(device)).stream().findFirst();
    }

    /** All that may still do something, the last joined first. */
    public static List<Device> joined(Tx tx) {
        return open(tx, DEVICE.ID.isNotNull());
    }

    private static List<Device> open(Tx tx, Condition which) {
        return all(tx, which.and(DEVICE.ENDED_AT_MS.isNull()));
    }

    private static List<Device> all(Tx tx, Condition which) {
        return tx.sql()
                .selectFrom(DEVICE)
                .where(which)
                .orderBy(DEVICE.JOINED_AT_MS.desc(), DEVICE.ID)
                .fetch(row -> device(row, row.getRole()));
    }

    private static Device device(DeviceRecord row, String role) {
        return new Device(
                row.getId(),
                row.getPerson(),
                role,
                row.getJoinedAtMs(),
                Objects.requireNonNullElse(row.getAskedRole(), ""),
                Objects.requireNonNullElse(row.getAllowedRole(), ""));
    }

    /** Of a device that was ended and shows this token still: the hash of the link by which devices joined then. */
    public static Optional<String> endedLinkHash(Tx tx, String token) {
        String hash = TokenHash.of(token);
        return tx.sql()
                .select(DEVICE.ENDED_LINK_HASH)
                .from(DEVICE)
                .where(DEVICE.TOKEN_HASH.eq(hash).or(DEVICE.EARLIER_HASH.eq(hash)))
                .and(DEVICE.ENDED_LINK_HASH.isNotNull())
                .limit(1)
                .fetchOptional(DEVICE.ENDED_LINK_HASH);
    }
}
