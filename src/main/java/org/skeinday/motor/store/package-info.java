/** Motor facts into tables, values out. */
@NullMarked
package org.skeinday.motor.store;

import org.jspecify.annotations.NullMarked;
