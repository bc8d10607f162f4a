/**
 * Hints to open pages that something changed, the clock exchange and the watch on the laptop's own clock, and
 * the way in for taps.
 */
@NullMarked
package org.skeinday.platform.live;

import org.jspecify.annotations.NullMarked;
