/** The join page and the list of devices. */
@NullMarked
package org.skeinday.device.web;

import org.jspecify.annotations.NullMarked;
