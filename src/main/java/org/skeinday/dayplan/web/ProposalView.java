package org.skeinday.dayplan.web;

import org.jspecify.annotations.Nullable;

/**
 * What came of the last deed on the page Day.
 *
 * @param problem why it was refused; empty when it was not
 * @param asks whether a proposal is asked for next
 */
public record ProposalView(String problem, DayView.@Nullable Proposal proposal, boolean asks) {}
