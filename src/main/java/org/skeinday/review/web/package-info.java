/** The page Evening and what it leads to. */
@NullMarked
package org.skeinday.review.web;

import org.jspecify.annotations.NullMarked;
