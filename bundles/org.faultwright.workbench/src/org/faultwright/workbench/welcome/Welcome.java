/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.welcome;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IEditorSite;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.EditorPart;
import org.faultwright.workbench.begin.FileDrop;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.RecentFolders;
import org.faultwright.workbench.look.Icons;
import org.faultwright.workbench.look.Menus;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.ScrolledPage;

/** What somebody sees who has nothing open: three things to do, and the folders that were open lately. */
public final class Welcome extends EditorPart {
    /** An argument of the start: the demo is wanted. */
    static final String DEMO = "-demo";
    public static final String ID = "org.faultwright.workbench.welcome";
    private static final String TUTORIAL = "tutorial";
    private static final int MOST_RECENT = 6;

    private ScrolledPage page;
    private final Runnable refresh = () -> page.later(this::write);
    private Button first;

    /** Shows it in front. */
    public static void open(IWorkbenchPage in) {
        try {
            in.openEditor(WelcomeInput.ONE, ID);
        } catch (PartInitException refused) {
            ILog.of(Welcome.class).error("The welcome cannot be shown.", refused);
        }
    }

    @Override
    public void init(IEditorSite site, IEditorInput input) {
        setSite(site);
        setInput(input);
        setPartName(input.getName());
    }

    @Override
    public void createPartControl(Composite parent) {
        Composite whole = new Composite(parent, SWT.NONE);
        whole.setLayout(new FillLayout());
        page = new ScrolledPage(whole);
        write();
        RecentFolders.addListener(refresh);
        FileDrop.onto(whole);
    }

    private void write() {
        page.write(body -> {
            GridLayoutFactory.fillDefaults().numColumns(2).margins(36, 28).spacing(16, 6).applyTo(body);
            Label name = words(body, "Faultwright");
            name.setFont(JFaceResources.getHeaderFont());
            beside(words(body, "For writing repair procedures down, proving them on every path, and printing cards for the bench. Local codes, the maker's "
                    + "instructions and licensed practice come first."));
            space(body);
            first = thing(body, "&New procedure\u2026", "procedure", "Answer what you would ask at the bench: which unit, what is reported, what it can be, how you "
                    + "would tell, what can hurt. A whole text grows beside your answers.", () -> Menus.run("newProcedure"));
            thing(body, "Open the &demo bench", "card", "A bench that could exist, with invented makers and devices: look how others write.",
                    () -> demo(getSite().getShell()));
            thing(body, "Read the &tutorial", "note", "A first procedure, step by step, from an empty file to a printed card.", () -> HelpView.showTopic(TUTORIAL));
            space(body);
            List<Path> recent = RecentFolders.all();
            Label folders = words(body, "Your folders");
            folders.setFont(JFaceResources.getBannerFont());
            recent.stream().limit(MOST_RECENT).forEach(folder -> link(body, folder));
            if (recent.isEmpty()) {
                beside(words(body, "None was open yet."));
            }
            link(body, "<a>Open a folder of procedures\u2026</a>", chosen -> Menus.run("openFolder"));
            beside(words(body, "Or drop a folder, a procedure or a table (CSV, XLSX) here."));
        });
    }

    private static Label words(Composite in, String words) {
        Label label = new Label(in, SWT.WRAP);
        label.setText(words.replace("&", "&&"));
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(200, SWT.DEFAULT).applyTo(label);
        return label;
    }

    private static void beside(Label label) {
        label.setForeground(Palette.now().of(Palette.Use.BESIDE));
    }

    private static void space(Composite in) {
        GridDataFactory.fillDefaults().span(2, 1).hint(1, 14).applyTo(new Label(in, SWT.NONE));
    }

    private static Button thing(Composite in, String words, String picture, String more, Runnable does) {
        Button button = new Button(in, SWT.PUSH | SWT.LEFT);
        button.setText(words);
        Icons.of(picture).ifPresent(button::setImage);
        button.addListener(SWT.Selection, event -> does.run());
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
        Label label = new Label(in, SWT.WRAP);
        label.setText(more);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).grab(true, false).hint(160, SWT.DEFAULT).indent(0, 6).applyTo(label);
        return button;
    }

    private void link(Composite in, Path folder) {
        if (Files.isDirectory(folder)) {
            String name = folder.getFileName() == null ? folder.toString() : folder.getFileName().toString();
            link(in, "<a>" + ScrolledPage.plain(name) + "</a>   " + ScrolledPage.plain(String.valueOf(folder.getParent())), chosen -> FileDrop.open(folder, getSite().getShell()));
        }
    }

    private static void link(Composite in, String words, Consumer<String> act) {
        Link link = ScrolledPage.link(in);
        link.setText(words);
        link.addListener(SWT.Selection, event -> act.accept(event.text));
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(200, SWT.DEFAULT).applyTo(link);
    }

    /**
     * What a window shows in which nothing was open: this page, and in front of it the demo where that was asked for.
     *
     * @param arguments of the start
     */
    public static void begin(IWorkbenchPage page, List<String> arguments) {
        open(page);
        if (arguments.contains(DEMO)) {
            Shell shell = page.getWorkbenchWindow().getShell();
            shell.getDisplay().asyncExec(() -> demo(shell)); // once the window is there
        }
    }

    private static void demo(Shell shell) {
        try {
            Editors.open(Folders.demo().getFile(Folders.FIRST_OF_THE_DEMO));
        } catch (CoreException refused) {
            MessageDialog.openInformation(shell, "Demo", refused.getStatus().getMessage());
        }
    }

    @Override
    public void setFocus() {
        if (first != null && !first.isDisposed()) {
            first.setFocus();
        }
    }

    @Override
    public void dispose() {
        RecentFolders.removeListener(refresh);
        super.dispose();
    }

    @Override
    public void doSave(IProgressMonitor monitor) {
        // nothing in it can be changed
    }

    @Override
    public void doSaveAs() {
        // nothing in it can be changed
    }

    @Override
    public boolean isDirty() {
        return false;
    }

    @Override
    public boolean isSaveAsAllowed() {
        return false;
    }
}
