package org.skeinday.device.web;

import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Whether the students hold the laptop: asked with each of its requests, read from the record only after a change, so that
 * the laptop's pages come even while the record is being opened again.
 */
public final class LentLaptop implements BooleanSupplier {
    private final BooleanSupplier inRecord;
    private final AtomicLong changes = new AtomicLong();
    private volatile @Nullable Known known;

    private record Known(boolean lent, long atChange) {}

    public LentLaptop(BooleanSupplier inRecord) {
        this.inRecord = inRecord;
    }

    /** It may be otherwise from now on. */
    public void changed() {
        changes.incrementAndGet();
    }

    @Override
    public boolean getAsBoolean() {
        long now = changes.get(); // before it is read: a change meanwhile makes this one old
        Known kept = known;
        if (kept == null || kept.atChange() != now) {
            kept = new Known(inRecord.getAsBoolean(), now);
            known = kept;
        }
        return kept.lent();
    }
}
