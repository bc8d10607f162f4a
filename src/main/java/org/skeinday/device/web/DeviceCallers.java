package org.skeinday.device.web;

import java.util.Optional;
import org.skeinday.device.Device;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Callers;
import org.skeinday.platform.http.Role;

/** Who asks: devices that have joined, and the laptop itself, which may be lent. */
public final class DeviceCallers implements Callers {
    private final Sessions sessions;
    private final Network network;
    private final LentLaptop lent;

    public DeviceCallers(Sessions sessions, Network network, LentLaptop lent) {
        this.sessions = sessions;
        this.network = network;
        this.lent = lent;
    }

    @Override
    public Optional<Caller> ofToken(String token) {
        return sessions.ofToken(token).map(DeviceCallers::caller);
    }

    @Override
    public void heard(String address) {
        network.heard(address);
    }

    @Override
    public Caller laptop() {
        return lent.getAsBoolean() ? Caller.lentLaptop() : Caller.laptop();
    }

    public static Caller caller(Device device) {
        return new Caller(device.id(), device.person(), Role.ofWord(device.role()), false);
    }
}
