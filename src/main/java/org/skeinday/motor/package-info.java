/** The rubber: sections, breaking turns, break risk, torque curves, bleeding holds and the next motor to make. */
@NullMarked
package org.skeinday.motor;

import org.jspecify.annotations.NullMarked;
