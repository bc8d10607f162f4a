package org.skeinday.platform.http;

/** Another program listens on the port that was asked for. */
public final class PortTaken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int port;

    PortTaken(int port, Throwable cause) {
        super("Port " + port + " is in use", cause);
        this.port = port;
    }

    public int port() {
        return port;
    }
}
