/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.nio.charset.Charset;
import java.util.Optional;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.text.undo.DocumentUndoEvent;
import org.eclipse.text.undo.DocumentUndoManagerRegistry;
import org.eclipse.text.undo.IDocumentUndoListener;
import org.eclipse.text.undo.IDocumentUndoManager;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IFileEditorInput;
import org.eclipse.ui.ISaveablePart2;
import org.eclipse.ui.editors.text.EditorsUI;
import org.eclipse.ui.editors.text.TextEditor;
import org.eclipse.ui.part.FileEditorInput;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.eclipse.ui.texteditor.SourceViewerDecorationSupport;
import org.faultwright.workbench.files.LargestText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Menus;

/**
 * The editor of procedures and libraries. What it does when its file is changed, deleted or write-protected outside is
 * told in the help page "When a file changes outside"; in every case the text in the editor stays until the writer says otherwise.
 */
public final class ProcedureEditor extends TextEditor implements ISaveablePart2 {
    /** The editor's name in the registry. */
    public static final String ID = "org.faultwright.workbench.editor";
    private static final String MATCHING = "matchingBrackets";
    private static final String MATCHING_COLOUR = "matchingBracketsColor";

    private final IDocumentUndoListener undoing = this::undone;
    private final BraceMatcher braces = new BraceMatcher();
    private Optional<Position> beforeUndo = Optional.empty();
    private IDocumentUndoManager undo;
    private RunningOnHints hints;

    @Override
    protected void initializeEditor() {
        // not the platform's own, which names menus that every bundle adds to
        setPreferenceStore(EditorsUI.getPreferenceStore());
        setSourceViewerConfiguration(new ProcedureConfiguration());
        configureInsertMode(SMART_INSERT, false);
        setInsertMode(INSERT);
        setCompatibilityMode(false);
    }

    @Override
    protected void doSetInput(IEditorInput input) throws CoreException {
        if (input instanceof IFileEditorInput file) {
            LargestText.check(file.getFile());
        }
        super.doSetInput(input);
        if (getSourceViewer() != null) {
            listenToUndo();
        }
    }

    @Override
    protected void setDocumentProvider(IEditorInput input) {
        setDocumentProvider(ProcedureDocuments.ALL);
    }

    @Override
    public void createPartControl(Composite parent) {
        super.createPartControl(parent);
        listenToUndo();
        StyledText widget = getSourceViewer().getTextWidget();
        AccessibleName.as(widget, () -> "Text of " + getEditorInput().getName());
        widget.addVerifyListener(event -> {
            if (LargestText.hasTooLongLine(event.text)) {
                event.doit = false;
                say("A line of more than " + LargestText.LONGEST_LINE / 1000 + ",000 characters is no procedure; it was not put in.");
            }
        });
        hints = RunningOnHints.beside(getSourceViewer());
        FileStates.opened(this);
    }

    /** Where steps lead that do not say it. */
    RunningOnHints hints() {
        return hints;
    }

    @Override
    protected void configureSourceViewerDecorationSupport(SourceViewerDecorationSupport support) {
        super.configureSourceViewerDecorationSupport(support);
        support.setCharacterPairMatcher(braces);
        support.setMatchingCharacterPainterPreferenceKeys(MATCHING, MATCHING_COLOUR);
    }

    // ---- the menu under the right button: what a writer does, each with its key

    @Override
    protected void editorContextMenuAboutToShow(IMenuManager menu) {
        addAction(menu, ITextEditorActionConstants.UNDO);
        addAction(menu, ITextEditorActionConstants.REDO);
        menu.add(new Separator());
        addAction(menu, ITextEditorActionConstants.CUT);
        addAction(menu, ITextEditorActionConstants.COPY);
        addAction(menu, ITextEditorActionConstants.PASTE);
        menu.add(new Separator());
        for (String command : new String[] {"fix", "goToDeclaration", "rename", "format", "toggleComment"}) {
            menu.add(Menus.item(getSite().getWorkbenchWindow(), command));
        }
    }

    /** Keeps out what other bundles have for files. */
    @Override
    protected boolean isEditorInputIncludedInContextMenu() {
        return false;
    }

    @Override
    protected void rulerContextMenuAboutToShow(IMenuManager menu) {
        menu.add(Menus.item(getSite().getWorkbenchWindow(), "nextFinding"));
        menu.add(Menus.item(getSite().getWorkbenchWindow(), "previousFinding"));
    }

    @Override
    protected void overviewRulerContextMenuAboutToShow(IMenuManager menu) {
        rulerContextMenuAboutToShow(menu);
    }

    // ---- the file outside

    /** The file of the text. */
    public Optional<IFile> file() {
        return getEditorInput() instanceof IFileEditorInput input ? Optional.of(input.getFile()) : Optional.empty();
    }

    /** The text. */
    public IDocument document() {
        return getDocumentProvider().getDocument(getEditorInput());
    }

    boolean isGone() {
        return file().filter(file -> file.getProject().isAccessible() && !FileStates.isThere(file)).isPresent();
    }

    boolean isWriteProtected() {
        return file().filter(FileStates::isThere).filter(IFile::isReadOnly).isPresent();
    }

    /** A sentence in the status line. */
    void say(String sentence) {
        getEditorSite().getActionBars().getStatusLineManager().setMessage(sentence);
    }

    @Override
    public void close(boolean save) {
        if (isGone()) {
            buffer().ifPresent(buffer -> buffer.setDirty(true));
            say(FileStates.gone(this));
            return;
        }
        super.close(save);
    }

    @Override
    protected void handleEditorInputChanged() {
        if (isGone()) {
            say(FileStates.gone(this));
        } else if (isDirty()) {
            FileStates.changedOutside(this);
        } else {
            takeFile();
        }
    }

    /** Reads the file again and drops what the editor holds. */
    void takeFile() {
        Point selected = getSourceViewer().getSelectedRange();
        try {
            file().orElseThrow().refreshLocal(org.eclipse.core.resources.IResource.DEPTH_ZERO, new NullProgressMonitor());
            buffer().orElseThrow().revert(new NullProgressMonitor());
            select(new Position(Math.min(selected.x, document().getLength()), 0));
        } catch (CoreException unreadable) {
            say("\"" + getEditorInput().getName() + "\" cannot be read again; the text here stays as it is.");
        }
    }

    @Override
    public void doSave(IProgressMonitor monitor) {
        if (isWriteProtected()) {
            FileStates.writeProtected(this);
            cancelIfNotSaved(monitor);
            return;
        }
        if (isGone()) {
            performSave(true, monitor == null ? new NullProgressMonitor() : monitor);
            return;
        }
        super.doSave(monitor);
    }

    /** Writes the text over whatever the file holds now. */
    void writeOver() {
        performSave(true, new NullProgressMonitor());
    }

    @Override
    protected void handleExceptionOnSave(CoreException refused, IProgressMonitor monitor) {
        FileStates.notSaved(this, refused);
        cancelIfNotSaved(monitor);
    }

    /** Asked before the editor or the window closes. */
    @Override
    public int promptToSaveOnClose() {
        return switch (FileStates.closing(this)) {
            case 0 -> YES;
            case 1 -> NO;
            default -> CANCEL;
        };
    }

    /** Whoever saves in order to close must hear that nothing was saved: the editor stays open then, and so does the text. */
    private void cancelIfNotSaved(IProgressMonitor monitor) {
        if (monitor != null && isDirty()) {
            monitor.setCanceled(true);
        }
    }

    @Override
    public boolean isSaveAsAllowed() {
        return true;
    }

    @Override
    protected void performSaveAs(IProgressMonitor monitor) {
        SavingAs.ask(this);
    }

    /** Goes on with another file, which holds the same text. */
    void moveTo(IFile file) {
        setInputWithNotify(new FileEditorInput(file));
    }

    @Override
    public boolean validateEditorInputState() {
        if (isWriteProtected()) {
            say(FileStates.protectedWords(this));
            return false;
        }
        return true;
    }

    @Override
    protected void validateState(IEditorInput input) {
        // asked above, in our own words
    }

    Optional<ITextFileBuffer> buffer() {
        return file().map(file -> FileBuffers.getTextFileBufferManager().getTextFileBuffer(file.getFullPath(), LocationKind.IFILE));
    }

    /** How the file is written; UTF-8 for all that were made here. */
    Charset charset() {
        return buffer().map(ITextFileBuffer::getEncoding).map(Charset::forName).orElse(java.nio.charset.StandardCharsets.UTF_8);
    }

    // ---- the selection

    /** What is selected, as a position in the document. */
    Position selection() {
        Point selected = getSourceViewer().getSelectedRange();
        return new Position(selected.x, selected.y);
    }

    void select(Position at) {
        ISourceViewer viewer = getSourceViewer();
        int length = document().getLength();
        int from = Math.min(at.getOffset(), length);
        viewer.setSelectedRange(from, at.isDeleted() ? 0 : Math.min(at.getLength(), length - from));
        viewer.revealRange(from, 0);
    }

    private void listenToUndo() {
        if (undo != null) {
            undo.removeDocumentUndoListener(undoing);
        }
        undo = DocumentUndoManagerRegistry.getDocumentUndoManager(document());
        if (undo != null) {
            undo.addDocumentUndoListener(undoing);
        }
    }

    /**
     * What was taken back is never left selected: the next key would replace it. A change at many places leaves the
     * cursor where it is, any other takes it there.
     */
    private void undone(DocumentUndoEvent event) {
        if ((event.getEventType() & (DocumentUndoEvent.ABOUT_TO_UNDO | DocumentUndoEvent.ABOUT_TO_REDO)) != 0) {
            if (event.isCompound() && beforeUndo.isEmpty()) {
                Position now = selection();
                try {
                    document().addPosition(now);
                    beforeUndo = Optional.of(now);
                } catch (org.eclipse.jface.text.BadLocationException changed) {
                    beforeUndo = Optional.empty();
                }
            }
            return;
        }
        if (beforeUndo.isPresent()) {
            Position kept = beforeUndo.get();
            if (!event.isCompound()) {
                return;
            }
            beforeUndo = Optional.empty();
            document().removePosition(kept);
            select(kept);
            return;
        }
        int end = event.getOffset() + (event.getText() == null ? 0 : event.getText().length());
        select(new Position(Math.min(end, document().getLength()), 0));
    }

    @Override
    public void dispose() {
        if (undo != null) {
            undo.removeDocumentUndoListener(undoing);
            undo = null;
        }
        super.dispose();
    }

    /** Also true where the file's attributes say so, before anybody types. */
    @Override
    public boolean isEditorInputReadOnly() {
        return isWriteProtected() || super.isEditorInputReadOnly();
    }
}
