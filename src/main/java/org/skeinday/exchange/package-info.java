/** The coach's own files in and out. */
@NullMarked
package org.skeinday.exchange;

import org.jspecify.annotations.NullMarked;
