/** Keeps the plan in force, as tables and facts. */
@NullMarked
package org.skeinday.dayplan.store;

import org.jspecify.annotations.NullMarked;
