package org.skeinday.device.web;

import java.util.Optional;
import org.skeinday.device.Device;
import org.skeinday.device.SpectatorPass;
import org.skeinday.platform.http.Caller;
import org.skeinday.platform.http.Callers;
import org.skeinday.platform.http.Role;

/** Who asks: devices that have joined, and the laptop itself, which may be lent. */
public final class DeviceCallers implements Callers {
    private final Sessions sessions;
    private final Network network;
    private final LentLaptop lent;
    private final JoinCodes codes;

    public DeviceCallers(Sessions sessions, Network network, LentLaptop lent, JoinCodes codes) {
        this.codes = codes;
        this.sessions = sessions;
        this.network = network;
        this.lent = lent;
    }

    @Override
    public Optional<Caller> ofToken(String token) {
        return SpectatorPass.read(token)
                .map(this::spectator)
                .orElseGet(() -> sessions.ofToken(token).map(DeviceCallers::caller));
    }

    /** Looks on as long as the address holds by which it came. */
    private Optional<Caller> spectator(SpectatorPass pass) {
        return SpectatorPass.fits(codes.link(), pass.code())
                ? Optional.of(new Caller(pass.device(), "", Role.SPECTATOR, false))
                : Optional.empty();
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
