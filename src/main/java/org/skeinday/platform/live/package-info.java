/** Tells pages that something changed: hints only, each page fetches again with its own rights. */
@NullMarked
package org.skeinday.platform.live;

import org.jspecify.annotations.NullMarked;
