/** Checklists and what they hold up: lists with revisions, one walk through a list, the one gate, cautions. */
@NullMarked
package org.skeinday.steps;

import org.jspecify.annotations.NullMarked;
