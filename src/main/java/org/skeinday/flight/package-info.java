/** What rubber and rotor do together: air, hover, and how long a motor holds a model up. Physics alone, no record. */
@NullMarked
package org.skeinday.flight;

import org.jspecify.annotations.NullMarked;
