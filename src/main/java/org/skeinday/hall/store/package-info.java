/** The tables of winding places. */
@NullMarked
package org.skeinday.hall.store;

import org.jspecify.annotations.NullMarked;
