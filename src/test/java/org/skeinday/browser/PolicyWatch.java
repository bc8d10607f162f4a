package org.skeinday.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * After each browser test: no page has tried what the content security policy forbids, which is also every request to
 * anywhere else. Registered for all tests in {@code META-INF/services}.
 */
public final class PolicyWatch implements AfterEachCallback {
    @Override
    public void afterEach(ExtensionContext context) {
        if (context.getRequiredTestClass().getSimpleName().endsWith("IT")) {
            assertEquals(List.of(), Browsers.forbidden(), "what the policy stopped in " + context.getDisplayName());
        }
    }
}
