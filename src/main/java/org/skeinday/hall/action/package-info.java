/** Acts that measure a winding place, take it into use, remove it. */
@NullMarked
package org.skeinday.hall.action;

import org.jspecify.annotations.NullMarked;
