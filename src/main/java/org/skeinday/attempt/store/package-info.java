/** Attempt facts into tables, values out. */
@NullMarked
package org.skeinday.attempt.store;

import org.jspecify.annotations.NullMarked;
