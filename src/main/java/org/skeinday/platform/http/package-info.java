/** The web frame: who may do what, pages and their errors, one server. */
@NullMarked
package org.skeinday.platform.http;

import org.jspecify.annotations.NullMarked;
