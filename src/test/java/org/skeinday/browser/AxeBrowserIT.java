package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.openqa.selenium.chrome.ChromeDriver;

/** What all pages are asked is really asked: a page that breaks rules of 2.1 and of 2.2 is told so, a good one is not. */
@Timeout(60)
class AxeBrowserIT {
    @Test
    void a_page_that_breaks_rules_is_told_each_of_them_and_the_element() {
        ChromeDriver browser = Browsers.of(Browsers.Size.PHONE);
        browser.get("data:text/html,<title>A page</title><main><img src='data:,'>"
                + "<p style='color:%23bbb'>grey on white</p>"
                + "<button style='width:9px;height:9px;padding:0;margin:0'></button>"
                + "<button style='width:9px;height:9px;padding:0;margin:0'></button></main>");
        String broken = Axe.broken(browser);
        for (String rule :
                new String[] {"html-has-lang", "image-alt", "color-contrast", "button-name", "target-size"}) {
            assertTrue(broken.contains(rule + ": "), rule + " in " + broken);
        }
        assertTrue(broken.contains("<img src=\"data:,\">"), broken);
        browser.get("data:text/html,<html lang=en><title>A page</title><main><p>black on white</p></main>");
        assertEquals("", Axe.broken(browser));
    }
}
