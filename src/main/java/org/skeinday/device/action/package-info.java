/** Devices join and are ended. */
@NullMarked
package org.skeinday.device.action;

import org.jspecify.annotations.NullMarked;
