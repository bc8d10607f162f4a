package org.skeinday.device.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.IntSupplier;
import org.skeinday.platform.record.WholeFile;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The addresses of this machine, and in the data folder the one at which a device joined last. */
public final class KeptPlaces implements Network.Places {
    private static final Logger LOG = LoggerFactory.getLogger(KeptPlaces.class);

    private final Addresses addresses;
    private final IntSupplier port;
    private final Path file;

    public KeptPlaces(Addresses addresses, IntSupplier port, Path data) {
        this.addresses = addresses;
        this.port = port;
        this.file = data.resolve("joined-at");
    }

    @Override
    public String address() {
        return at(addresses.best());
    }

    @Override
    public List<String> all() {
        List<String> all = addresses.forTablets().stream().map(this::at).toList();
        return all.isEmpty() ? List.of(address()) : all;
    }

    private String at(String host) {
        return "http://" + host + ":" + port.getAsInt();
    }

    @Override
    public boolean isOwn(String address) {
        return addresses.names().contains(address);
    }

    @Override
    public Optional<String> joined() {
        try {
            return Files.exists(file) ? Optional.of(Files.readString(file).strip()) : Optional.empty();
        } catch (IOException e) {
            LOG.warn("Where devices joined cannot be read", e);
            return Optional.empty();
        }
    }

    /** Only a help for the day: joining does not wait for it. */
    @Override
    public void keepJoined(String address) {
        try {
            if (!joined().equals(Optional.of(address))) {
                WholeFile.write(file, address);
            }
        } catch (IOException e) {
            LOG.warn("Where devices joined cannot be kept", e);
        }
    }
}
