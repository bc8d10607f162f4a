package org.skeinday.dayplan.web;

import org.jspecify.annotations.Nullable;

/** What stands beside the day. @param problem why there is nothing to show; empty when nothing is wrong */
public record ProposalView(String problem, DayView.@Nullable Proposal proposal) {}
