/** What was changed of rules, windows, entries, rights, results and signatures, by whom, and what it was before. */
@NullMarked
package org.skeinday.audit;

import org.jspecify.annotations.NullMarked;
