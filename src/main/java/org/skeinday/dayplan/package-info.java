/** The plan of a day: tasks for people, places, motors and models inside hard windows, proven and explained. */
@NullMarked
package org.skeinday.dayplan;

import org.jspecify.annotations.NullMarked;
