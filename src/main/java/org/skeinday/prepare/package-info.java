/** Prepare: what a coach sets up before a day, and in which order. */
@NullMarked
package org.skeinday.prepare;

import org.jspecify.annotations.NullMarked;
