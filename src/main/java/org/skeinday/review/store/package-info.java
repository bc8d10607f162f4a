/** Tables of the evening: flights with everything that was noted of them. */
@NullMarked
package org.skeinday.review.store;

import org.jspecify.annotations.NullMarked;
