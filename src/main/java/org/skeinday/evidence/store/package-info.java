/** Marks of values into tables, and out. */
@NullMarked
package org.skeinday.evidence.store;

import org.jspecify.annotations.NullMarked;
