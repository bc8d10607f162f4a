package org.skeinday.device;

import org.jspecify.annotations.Nullable;

/**
 * A device may do nothing any more.
 *
 * @param atMs server time, epoch ms
 * @param linkHash of the join link's token then: it joins again by another only; null in records before that was kept
 */
public record DeviceEnded(
        String device, long atMs, @Nullable String linkHash) {
    public DeviceEnded {
        if (linkHash != null) {
            TokenHash.check(linkHash);
        }
    }
}
