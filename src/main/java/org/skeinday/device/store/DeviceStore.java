package org.skeinday.device.store;

import static org.skeinday.platform.db.schema.Tables.DEVICE;

import java.util.List;
import java.util.Optional;
import org.jooq.Condition;
import org.skeinday.device.Device;
import org.skeinday.device.DeviceChanged;
import org.skeinday.device.DeviceEnded;
import org.skeinday.device.DeviceJoined;
import org.skeinday.device.TokenHash;
import org.skeinday.platform.db.Tx;
import org.skeinday.platform.record.FactKind;

/** Devices in tables: facts in, devices out. */
public final class DeviceStore {
    private DeviceStore() {}

    public static List<FactKind> factKinds() {
        return List.of(
                FactKind.of("device.joined", DeviceJoined.class, DeviceStore::joined),
                FactKind.of("device.changed", DeviceChanged.class, DeviceStore::changed),
                FactKind.of("device.ended", DeviceEnded.class, DeviceStore::ended));
    }

    private static void joined(Tx tx, DeviceJoined fact) {
        tx.sql()
                .insertInto(DEVICE)
                .set(DEVICE.ID, fact.device())
                .set(DEVICE.TOKEN_HASH, fact.tokenHash())
                .set(DEVICE.PERSON, fact.person())
                .set(DEVICE.ROLE, fact.role())
                .set(DEVICE.JOINED_AT_MS, fact.atMs())
                .execute();
    }

    private static void changed(Tx tx, DeviceChanged fact) {
        tx.sql()
                .update(DEVICE)
                .set(DEVICE.PERSON, fact.person())
                .set(DEVICE.ROLE, fact.role())
                .set(DEVICE.TOKEN_HASH, fact.tokenHash())
                .where(DEVICE.ID.eq(fact.device()))
                .execute();
    }

    private static void ended(Tx tx, DeviceEnded fact) {
        tx.sql()
                .update(DEVICE)
                .set(DEVICE.ENDED_AT_MS, fact.atMs())
                .where(DEVICE.ID.eq(fact.device()))
                .execute();
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
                .fetch(row -> new Device(row.getId(), row.getPerson(), row.getRole(), row.getJoinedAtMs()));
    }
}
