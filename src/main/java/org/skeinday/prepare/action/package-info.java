/** Rows of what is prepared: added, changed, taken out, each as one act. */
@NullMarked
package org.skeinday.prepare.action;

import org.jspecify.annotations.NullMarked;
