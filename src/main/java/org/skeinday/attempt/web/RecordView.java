package org.skeinday.attempt.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.skeinday.platform.http.FormErrors;
import org.skeinday.steps.web.StripView;

/**
 * Everything about one attempt's time, in finished words.
 *
 * @param strip where it stands
 * @param readings each watch's times, also those that were corrected or taken back
 * @param marks what the timekeepers pressed beside the landing
 * @param times every official time that it ever had, and why it was opened again
 * @param signs who signs; empty where nobody does
 * @param maySettle whether the reader settles protests and opens results again
 * @param officialMs the time that is shown, for who signs it; -1 for none
 * @param typesTimes how many watches the reader may type the time of; 0 for none
 * @param typedSeen when the time of each watch was typed last, as {@code SaidMeanwhile} writes it
 * @param caught whether a time may be the one at the catch
 * @param flown which motor was flown, to be corrected; null where it cannot be
 * @param until epoch ms when the time to protest is over, 0 for never or no result
 */
public record RecordView(
        String attempt,
        String title,
        String event,
        String state,
        StripView strip,
        List<NowView.Line> lines,
        List<NowView.Line> readings,
        List<NowView.Line> marks,
        List<NowView.Line> times,
        List<Sign> signs,
        List<Marked> protests,
        boolean mayProtest,
        boolean maySettle,
        boolean mayReopen,
        long officialMs,
        int typesTimes,
        String typedSeen,
        boolean caught,
        FlownMotor.@Nullable Shown flown,
        long until,
        FormErrors form) {

    public String wrong(String field) {
        return form.message(field);
    }

    /**
     * One signature.
     *
     * @param as as the form sends it
     * @param done who signed and when; empty as long as it is missing
     * @param may whether the reader may sign here
     * @param pin whether that takes the coach's PIN
     */
    public record Sign(String as, String words, String done, boolean may, boolean pin) {}

    /** A protest. @param settled how it ended, empty while it is open */
    public record Marked(String id, String words, String settled) {}
}
