/** What is printed, and the page Key in. */
@NullMarked
package org.skeinday.paper.web;

import org.jspecify.annotations.NullMarked;
