package org.skeinday;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/** This machine's own names and addresses. */
final class Addresses {
    Set<String> names() {
        Set<String> names = new HashSet<>(Set.of("localhost", "127.0.0.1"));
        for (InetAddress address : all()) {
            names.add(address.getHostAddress().toLowerCase(Locale.ROOT));
        }
        return names;
    }

    /** The private IPv4 address that tablets most likely reach, else localhost. */
    String best() {
        return all().stream()
                .filter(a -> a instanceof Inet4Address && a.isSiteLocalAddress())
                .map(InetAddress::getHostAddress)
                .sorted()
                .findFirst()
                .orElse("localhost");
    }

    private static Set<InetAddress> all() {
        Set<InetAddress> all = new HashSet<>();
        try {
            NetworkInterface.networkInterfaces()
                    .flatMap(NetworkInterface::inetAddresses)
                    .forEach(all::add);
        } catch (SocketException e) {
            all.add(InetAddress.getLoopbackAddress()); // no network: the laptop alone still works
        }
        return all;
    }
}
