/** The winding plan: stretch, turns, walk-in, back-off. */
@NullMarked
package org.skeinday.winding;

import org.jspecify.annotations.NullMarked;
