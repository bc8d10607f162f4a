package org.skeinday.paper.web;

import java.util.List;
import org.skeinday.platform.http.PageHelp;
import org.skeinday.steps.Caution;

/** The guide to print. @param cautions on top, whatever else is left out */
public record GuideView(List<PageHelp> pages, List<Caution> cautions) {}
