/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider.IStyledLabelProvider;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.swt.graphics.Image;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.workbench.live.FileHead;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.ShelfFile;
import org.faultwright.workbench.look.Icons;

/** A text by its title, with its status and what was found in it. */
final class ShelfLabels extends ColumnLabelProvider implements IStyledLabelProvider {
    @Override
    public StyledString getStyledText(Object element) {
        StyledString label = new StyledString();
        Optional<ShelfFile> text = text(element);
        label.append(text.map(known -> known.head().title()).filter(words -> !words.isBlank())
                .orElseGet(() -> name((IResource) element)));
        text.ifPresent(known -> {
            label.append("  " + known.head().revision(), StyledString.QUALIFIER_STYLER);
            label.append(findings(known.findings()), StyledString.COUNTER_STYLER);
        });
        return label;
    }

    /** What the line of a text shows, its picture too. */
    String line(IFile file) {
        return picture(file) + " " + getText(file);
    }

    private static String name(IResource resource) {
        return resource.getName().replaceFirst("\\.procedure$", "");
    }

    @Override
    public String getText(Object element) {
        return getStyledText(element).getString();
    }

    @Override
    public Image getImage(Object element) {
        if (!(element instanceof IFile)) {
            return Icons.of(element instanceof IProject ? "library" : "folder").orElse(null);
        }
        return Icons.of(picture((IFile) element)).orElse(null);
    }

    private static String picture(IFile file) {
        Optional<ShelfFile> text = text(file);
        if (text.filter(known -> count(known.findings(), Severity.ERROR) > 0).isPresent()) {
            return "error";
        }
        return text.filter(known -> known.head().library()).isPresent() ? "library" : "procedure";
    }

    /** Titles are longer than the view is wide. */
    @Override
    public String getToolTipText(Object element) {
        return element instanceof IFile file ? getText(element) + "\n" + LiveTexts.path(file) : null;
    }

    /** As it stands in its editor, or else on disk. */
    private static Optional<ShelfFile> text(Object element) {
        if (!(element instanceof IFile file)) {
            return Optional.empty();
        }
        Optional<ShelfFile> known = FolderDocuments.get().of(file);
        return LiveTexts.get().of(file).map(LiveText::text).map(open -> new ShelfFile(
                known.map(ShelfFile::head).orElseGet(() -> FileHead.of(open.content())), open.findings(), true)).or(() -> known);
    }

    private static String findings(List<Finding> found) {
        long errors = count(found, Severity.ERROR);
        long warnings = count(found, Severity.WARNING);
        if (errors + warnings == 0) {
            return "";
        }
        return "  " + (errors > 0 ? errors + (errors == 1 ? " error" : " errors") : "")
                + (errors > 0 && warnings > 0 ? ", " : "")
                + (warnings > 0 ? warnings + (warnings == 1 ? " warning" : " warnings") : "");
    }

    private static long count(List<Finding> found, Severity severity) {
        return found.stream().filter(finding -> finding.severity() == severity).count();
    }
}
