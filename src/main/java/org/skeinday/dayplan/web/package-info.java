/** The day's plan on its page. */
@NullMarked
package org.skeinday.dayplan.web;

import org.jspecify.annotations.NullMarked;
