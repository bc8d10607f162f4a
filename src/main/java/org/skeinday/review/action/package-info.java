/** What is decided in the evening: what to change next time, a new season. */
@NullMarked
package org.skeinday.review.action;

import org.jspecify.annotations.NullMarked;
