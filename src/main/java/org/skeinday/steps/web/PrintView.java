package org.skeinday.steps.web;

import java.util.List;
import org.skeinday.steps.Checklist;

/** All lists in the revision in force. */
public record PrintView(List<Checklist> lists) {}
