/** Scores and places. */
@NullMarked
package org.skeinday.standing;

import org.jspecify.annotations.NullMarked;
