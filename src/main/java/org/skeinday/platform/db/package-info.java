/** The database behind the record, and the generated schema. jOOQ lives here and in the stores. */
@NullMarked
package org.skeinday.platform.db;

import org.jspecify.annotations.NullMarked;
