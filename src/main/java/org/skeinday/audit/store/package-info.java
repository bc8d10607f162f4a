/** The audit in tables. */
@NullMarked
package org.skeinday.audit.store;

import org.jspecify.annotations.NullMarked;
