/** The server: who may do what, pages, forms, errors. */
@NullMarked
package org.skeinday.platform.http;

import org.jspecify.annotations.NullMarked;
