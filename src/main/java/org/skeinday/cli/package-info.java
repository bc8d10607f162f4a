/** The command line: one class per command. Some run the whole program, and Main alone knows them. */
@NullMarked
package org.skeinday.cli;

import org.jspecify.annotations.NullMarked;
