/** The pages Bench, wall and one motor. */
@NullMarked
package org.skeinday.bench.web;

import org.jspecify.annotations.NullMarked;
