/** The pages around an attempt: Now, Timing, Result sheet. */
@NullMarked
package org.skeinday.attempt.web;

import org.jspecify.annotations.NullMarked;
