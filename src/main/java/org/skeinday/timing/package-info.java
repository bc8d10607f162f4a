/** Several watches, one official time: exact, by a named rule. */
@NullMarked
package org.skeinday.timing;

import org.jspecify.annotations.NullMarked;
