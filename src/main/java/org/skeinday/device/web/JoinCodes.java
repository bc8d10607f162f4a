package org.skeinday.device.web;

import java.io.IOException;
import java.util.Optional;
import org.skeinday.device.JoinCode;

/** The secrets that let a device in. They are the folder's, not the record's: nothing of them is ever in the journal. */
public interface JoinCodes {
    /** What stands behind the # of the join link and in the QR code. */
    JoinCode link();

    /** What is typed in place of the link, as {@link org.skeinday.device.TypedCode} makes it. */
    String typed();

    /** What the coach has handed out to timekeepers and captains today; empty when nothing was, or not today. */
    Optional<String> ofDay();

    /**
     * Makes another link and another typed code; the old ones and the code of the day open nothing any more.
     *
     * @param act number of the form that asks for it: sent again it changes nothing
     */
    void renew(String act) throws IOException;

    /** Makes another code of the day; the one before opens nothing any more. @param act as for {@link #renew} */
    void handOut(String act) throws IOException;
}
