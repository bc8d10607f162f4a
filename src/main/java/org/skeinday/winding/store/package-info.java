/** Winds into tables, values out. */
@NullMarked
package org.skeinday.winding.store;

import org.jspecify.annotations.NullMarked;
