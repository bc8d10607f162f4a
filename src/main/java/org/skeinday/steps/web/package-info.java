/** The page Checks, its lists on paper, and the form of one list. */
@NullMarked
package org.skeinday.steps.web;

import org.jspecify.annotations.NullMarked;
