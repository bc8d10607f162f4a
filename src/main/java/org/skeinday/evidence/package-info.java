/** What of the record may be learned from: the one rule of what counts, where a value came from, which values are unlikely. */
@NullMarked
package org.skeinday.evidence;

import org.jspecify.annotations.NullMarked;
