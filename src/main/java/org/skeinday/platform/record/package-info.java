/** Acts and the record: the journal is what happened, the database is its projection. */
@NullMarked
package org.skeinday.platform.record;

import org.jspecify.annotations.NullMarked;
