/** The contest: its day and rules, who takes part with which models, when they may fly, and who helps. */
@NullMarked
package org.skeinday.contest;

import org.jspecify.annotations.NullMarked;
