/** Contest facts into tables, values out. */
@NullMarked
package org.skeinday.contest.store;

import org.jspecify.annotations.NullMarked;
