/** The Bench: motors in order of need, each with its wait and the one thing to do to it now. */
@NullMarked
package org.skeinday.bench;

import org.jspecify.annotations.NullMarked;
