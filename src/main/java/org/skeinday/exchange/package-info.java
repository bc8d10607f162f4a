/**
 * The coach's own files in and out: text to facts, values to text. Pure, with three exceptions that are named here: bytes
 * become text with the JDK's character sets ({@link org.skeinday.exchange.FileText}), and
 * {@link org.skeinday.exchange.XlsxBook} alone a workbook's bytes with fastexcel, and
 * {@link org.skeinday.exchange.CsvLines} alone uses a library (fastcsv) to split text into cells, because quoting rules
 * are the one part of a comma-separated file that is easier to get wrong than to read about; no type of it leaves that
 * class.
 */
@NullMarked
package org.skeinday.exchange;

import org.jspecify.annotations.NullMarked;
