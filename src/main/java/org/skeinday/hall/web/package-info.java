/** The page Hall. */
@NullMarked
package org.skeinday.hall.web;

import org.jspecify.annotations.NullMarked;
