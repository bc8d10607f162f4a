/** The page of the audit and its file. */
@NullMarked
package org.skeinday.audit.web;

import org.jspecify.annotations.NullMarked;
