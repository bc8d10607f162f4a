/** The deeds around an attempt: read, ask the rule, answer facts. */
@NullMarked
package org.skeinday.attempt.action;

import org.jspecify.annotations.NullMarked;
