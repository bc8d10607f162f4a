/** What happened and what it means: flights with all their figures, findings with their uncertainty, pictures as values. */
@NullMarked
package org.skeinday.review;

import org.jspecify.annotations.NullMarked;
