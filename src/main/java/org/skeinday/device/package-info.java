/** Devices that join, and what they may do: the facts about them. */
@NullMarked
package org.skeinday.device;

import org.jspecify.annotations.NullMarked;
