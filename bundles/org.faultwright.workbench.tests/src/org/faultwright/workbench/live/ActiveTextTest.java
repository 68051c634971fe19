/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.ui.IPartService;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Which text the views follow. */
class ActiveTextTest {
    @AfterEach
    void leave_it_as_it_was() {
        page().closeAllEditors(false);
    }

    /** After a start the text that was open is seen before anything was clicked: the window calls nothing active then. releng/starts.sh does it in earnest. */
    @Test
    void should_follow_the_text_that_is_seen_where_nothing_was_clicked_yet() throws CoreException {
        ITextEditor seen = Editors.open(Folders.demo().getFile(Folders.FIRST_OF_THE_DEMO)).orElseThrow();
        Waiting.until("it is checked", () -> ActiveText.get().place().isPresent());
        IWorkbenchPage untouched = like(IWorkbenchPage.class, page(), Map.of("getActiveEditor", () -> null, "getActivePart", () -> null));
        IPartService nobody = like(IPartService.class, page(), Map.of("addPartListener", () -> null));
        IWorkbenchWindow started = like(IWorkbenchWindow.class, page().getWorkbenchWindow(), Map.of("getActivePage", () -> untouched, "getPartService", () -> nobody));
        ActiveText text = new ActiveText();

        text.follow(started);

        assertEquals(Optional.of(seen), text.editor());
        assertEquals(Folders.FIRST_OF_THE_DEMO, text.place().orElseThrow().live().file().getName());
    }

    /** What answers as it does, but for some of its methods. */
    private static <T> T like(Class<T> kind, Object as, Map<String, Callable<Object>> but) {
        return kind.cast(Proxy.newProxyInstance(kind.getClassLoader(), new Class<?>[] {kind}, (proxy, method, arguments) -> {
            if (but.containsKey(method.getName())) {
                return but.get(method.getName()).call();
            }
            try {
                return method.invoke(as, arguments);
            } catch (InvocationTargetException failed) {
                throw failed.getCause();
            }
        }));
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
