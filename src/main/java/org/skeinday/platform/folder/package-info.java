/** The data folder beside the record: where it is, its backups and their second place, its log. */
@NullMarked
package org.skeinday.platform.folder;

import org.jspecify.annotations.NullMarked;
