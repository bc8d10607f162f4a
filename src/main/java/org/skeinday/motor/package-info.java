/** Rubber: lots of strip, the loops tied from them, and what they can take and give. */
@NullMarked
package org.skeinday.motor;

import org.jspecify.annotations.NullMarked;
