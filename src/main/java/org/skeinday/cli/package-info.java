/** The command line: one class per command. */
@NullMarked
package org.skeinday.cli;

import org.jspecify.annotations.NullMarked;
