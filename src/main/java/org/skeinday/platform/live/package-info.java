/** Hints to open pages that something changed, the clock exchange, and the way in for taps. */
@NullMarked
package org.skeinday.platform.live;

import org.jspecify.annotations.NullMarked;
