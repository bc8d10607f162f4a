/** Takes a plan: asks, answers facts. */
@NullMarked
package org.skeinday.dayplan.action;

import org.jspecify.annotations.NullMarked;
