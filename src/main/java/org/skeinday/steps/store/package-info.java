/** The tables of checklists: revisions, runs, the gate, cautions that were read. */
@NullMarked
package org.skeinday.steps.store;

import org.jspecify.annotations.NullMarked;
