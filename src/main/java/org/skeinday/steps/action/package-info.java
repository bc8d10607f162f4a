/** Acts of a walk through a list: taps, corrections, revisions. */
@NullMarked
package org.skeinday.steps.action;

import org.jspecify.annotations.NullMarked;
