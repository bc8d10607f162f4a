/** Devices in tables. */
@NullMarked
package org.skeinday.device.store;

import org.jspecify.annotations.NullMarked;
