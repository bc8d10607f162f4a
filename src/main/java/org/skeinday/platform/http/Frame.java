package org.skeinday.platform.http;

import gg.jte.Content;
import java.util.List;

/**
 * What the shared frame around a page shows, in finished words.
 *
 * @param title of the page, without the program's name
 * @param here path of the page, to mark its word in the bar
 * @param nav only the pages of the caller's role
 * @param who person and role, empty for a device that has not joined
 * @param device id of the device that asked, empty when it has not joined
 * @param moment of the record that the page shows
 * @param pace the waits of the page's scripts
 * @param trouble what is wrong with the laptop just now, empty when nothing is
 * @param first what comes before everything else, empty while there is nothing
 * @param help what the page is for, sentence by sentence; empty where nothing is said
 * @param foot whether there is a foot with help and the light of the screen; a refusal has none
 * @param looksOn whether a spectator asks: then nothing of the crew's is around the page
 * @param light of this device's screen
 */
public record Frame(
        String title,
        String here,
        List<NavItem> nav,
        String who,
        String device,
        String moment,
        String pace,
        String trouble,
        Content first,
        List<String> help,
        boolean foot,
        boolean looksOn,
        ScreenLight light) {
    public Frame {
        help = List.copyOf(help);
        nav = List.copyOf(nav);
    }

    /** Of the program that made the page; said when somebody asks which one runs. */
    public String version() {
        String version = Frame.class.getPackage().getImplementationVersion();
        return version == null ? "(from its build folder)" : version;
    }

    /** Where the program's name leads. */
    public String home() {
        return looksOn ? "/results/wall" : "/";
    }

    /** A page below another one's may have a word of its own. */
    public boolean isHere(NavItem item) {
        return here.equals(item.path())
                || (item.path().length() > 1
                        && here.startsWith(item.path() + "/")
                        && nav.stream().noneMatch(other -> other.path().equals(here)));
    }
}
