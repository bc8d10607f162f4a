/** The hall and its winding places, measured by tape: what is too close to what, and the place drawn from above. */
@NullMarked
package org.skeinday.hall;

import org.jspecify.annotations.NullMarked;
