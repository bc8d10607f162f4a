/** Attempts, their times, and flights outside any attempt. */
@NullMarked
package org.skeinday.attempt;

import org.jspecify.annotations.NullMarked;
