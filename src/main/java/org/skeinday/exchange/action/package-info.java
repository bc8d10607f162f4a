/** Taking files in: one act for all of them. */
@NullMarked
package org.skeinday.exchange.action;

import org.jspecify.annotations.NullMarked;
