/** Paper: the day as cards that are written on and keyed in. */
@NullMarked
package org.skeinday.paper;

import org.jspecify.annotations.NullMarked;
