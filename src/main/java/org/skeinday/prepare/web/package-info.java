/** The pages of Prepare. */
@NullMarked
package org.skeinday.prepare.web;

import org.jspecify.annotations.NullMarked;
