/** A card into the record, as one act. */
@NullMarked
package org.skeinday.paper.action;

import org.jspecify.annotations.NullMarked;
