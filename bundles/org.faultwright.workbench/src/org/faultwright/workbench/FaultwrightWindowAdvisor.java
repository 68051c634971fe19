/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.List;
import org.eclipse.core.runtime.Platform;
import org.eclipse.e4.ui.model.application.ui.MUIElement;
import org.eclipse.e4.ui.model.application.ui.basic.MTrimmedWindow;
import org.eclipse.e4.ui.model.application.ui.basic.MWindow;
import org.eclipse.e4.ui.workbench.modeling.EModelService;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;
import org.eclipse.ui.internal.WorkbenchPlugin;
import org.eclipse.ui.internal.registry.ActionSetRegistry;
import org.eclipse.ui.internal.registry.IActionSetDescriptor;
import org.faultwright.workbench.begin.FileDrop;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.look.ColourTheme;
import org.faultwright.workbench.look.FindDialog;
import org.faultwright.workbench.recovery.Recovery;
import org.faultwright.workbench.settings.WorkbenchSettings;
import org.faultwright.workbench.start.StartSequence;
import org.faultwright.workbench.start.StartTimes;
import org.faultwright.workbench.welcome.Welcome;

/** Size, title and bars of the window, and what a first start shows. */
final class FaultwrightWindowAdvisor extends WorkbenchWindowAdvisor {
    /** In widths of a character of the texts. */
    private static final int WIDTH = 190;
    private static final int HEIGHT = 120;

    FaultwrightWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        super(configurer);
    }

    @Override
    public ActionBarAdvisor createActionBarAdvisor(IActionBarConfigurer configurer) {
        return new FaultwrightBars(configurer);
    }

    /** Tools that platform bundles bring along for programmers; there is no public way to leave them out. */
    private static void withoutForeignTools() {
        ActionSetRegistry registry = WorkbenchPlugin.getDefault().getActionSetRegistry();
        for (IActionSetDescriptor set : registry.getActionSets()) {
            registry.removeExtension(set.getConfigurationElement().getDeclaringExtension(), new Object[] {set});
        }
    }

    @Override
    public void preWindowOpen() {
        withoutForeignTools();
        ColourTheme.colour();
        WorkbenchSettings.showFont();
        IWorkbenchWindowConfigurer window = getWindowConfigurer();
        window.setInitialSize(size());
        window.setTitle("Faultwright");
        window.setShowCoolBar(true);
        window.setShowStatusLine(true);
        window.setShowPerspectiveBar(false);
        window.setShowProgressIndicator(false);
        window.addEditorAreaTransfer(FileTransfer.getInstance());
        window.configureEditorAreaDropListener(FileDrop.forTexts(window.getWindow()::getShell));
    }

    /** How large the first window is: a text and its card beside each other, as the screen allows. */
    static Point size() {
        Rectangle screen = Display.getCurrent().getPrimaryMonitor().getClientArea();
        double character = WorkbenchSettings.characterWidth();
        return new Point(Math.min((int) (WIDTH * character), screen.width), Math.min((int) (HEIGHT * character), screen.height));
    }

    /** The platform's search over all its commands names what a technician has no use for. */
    private static void withoutSearchField(IWorkbenchWindow window) {
        MWindow model = window.getService(MWindow.class);
        EModelService models = window.getService(EModelService.class);
        for (MUIElement field : models.findElements(model, "SearchField", MUIElement.class, List.of(), EModelService.IN_TRIM)) {
            field.setToBeRendered(false);
        }
    }

    /** The platform would offer to hide and lock tools, and has no place where they come back from. */
    private static void withoutMenusOfBars(IWorkbenchWindow window) {
        MWindow model = window.getService(MWindow.class);
        if (!(model instanceof MTrimmedWindow trimmed)) {
            return;
        }
        List<Object> bars = trimmed.getTrimBars().stream().map(MUIElement::getWidget).toList();
        window.getShell().getDisplay().addFilter(SWT.MenuDetect, event -> {
            for (Control over = event.widget instanceof Control control ? control : null; over != null; over = over.getParent()) {
                event.doit &= !bars.contains(over);
            }
        });
    }

    @Override
    public void postWindowOpen() {
        IWorkbenchWindow window = getWindowConfigurer().getWindow();
        withoutSearchField(window);
        withoutMenusOfBars(window);
        FindDialog.inPlainWords();
        ActiveText.get().follow(window);
        StartSequence.opened(window.getShell());
        if (window.getActivePage().getEditorReferences().length == 0) {
            Welcome.begin(window.getActivePage(), List.of(Platform.getApplicationArgs()));
        }
        FolderDocuments.get();
        StartTimes.of(window);
        Recovery.get().start();
        window.getShell().getDisplay().asyncExec(() -> Recovery.ask(window.getShell()));
    }
}
