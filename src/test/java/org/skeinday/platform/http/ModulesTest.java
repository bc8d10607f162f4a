package org.skeinday.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ModulesTest {
    private final Map<String, String> files = new HashMap<>(Map.of(
            "page.js", "// Starts.\nimport './b.js';\nimport { one as uno } from './a.js';\nuno();\n",
            "b.js", "import { one } from './a.js';\nexport async function two() {\n  return one();\n}\n",
            "a.js", "export const one = () => 1;\n",
            "watch.js", "import { two } from './b.js';\nimport { own } from './own.js';\nimport('./a.js');\n",
            "own.js", "export const own = 3;\n"));

    private Modules modules() {
        return new Modules(files::get);
    }

    @Test
    void what_every_page_needs_is_one_file_in_which_each_module_comes_once_and_after_what_it_imports() {
        assertEquals("""
                const $a = (() => {
                const one = () => 1;
                return { one };
                })();
                export const { one } = $a;
                const $b = (() => {
                const { one } = $a;
                async function two() {
                  return one();
                }
                return { two };
                })();
                export const { two } = $b;
                const $page = (() => {

                const { one: uno } = $a;
                uno();
                return {  };
                })();
                """, modules().text("page.js"));
    }

    @Test
    void a_module_of_one_page_imports_from_there_what_is_in_it_and_the_rest_as_before() {
        assertEquals(
                "import { two } from './page.js';\nimport { own } from './own.js';\nimport('./page.js');\n",
                modules().text("watch.js"));
        assertEquals("export const own = 3;\n", modules().text("own.js"));
    }

    @Test
    void a_part_of_it_is_not_served_beside_it_or_it_would_run_twice() {
        assertNull(modules().text("a.js"));
    }

    @Test
    void what_it_cannot_put_together_is_refused_by_name() {
        files.put("a.js", "export default 1;\n");
        assertRefused("a.js has an import or export of a form that is not known here: export default 1;");
        files.put("a.js", "import './b.js';\nexport const one = 1;\n");
        assertRefused("in a circle");
        files.put("a.js", "export const one = 1;\nexport const two = 2;\n");
        assertRefused("two is by a.js and b.js");
    }

    private void assertRefused(String words) {
        String said = assertThrows(IllegalStateException.class, this::modules).getMessage();
        assertTrue(said.contains(words), said);
    }

    @Test
    void the_programs_own_modules_go_together() {
        Modules own = new Modules(name -> {
            try (var in = Modules.class.getResourceAsStream("/static/js/" + name)) {
                return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
        String page = own.text("page.js");
        assertTrue(page.contains("export const { MOST, addTap"), page);
        assertFalse(own.text("watch.js").contains("./outbox.js"));
    }
}
