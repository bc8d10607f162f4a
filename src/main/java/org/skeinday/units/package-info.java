/** Quantities of the trade, one type each, SI inside: mm, g, N·mm, motor turns. */
@NullMarked
package org.skeinday.units;

import org.jspecify.annotations.NullMarked;
