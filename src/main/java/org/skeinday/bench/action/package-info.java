/** What helpers do to motors. */
@NullMarked
package org.skeinday.bench.action;

import org.jspecify.annotations.NullMarked;
