/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.shelf;

import java.util.Locale;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider.IStyledLabelProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.swt.graphics.Image;
import org.faultwright.analysis.Severity;
import org.faultwright.language.server.OpenText;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;
import org.faultwright.workbench.Pictures;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.Shelf;

/** A text by its title, with its status and what was found in it. */
final class ShelfLabels extends LabelProvider implements IStyledLabelProvider {
    @Override
    public StyledString getStyledText(Object element) {
        StyledString label = new StyledString();
        Optional<OpenText> text = text(element);
        String title = text.map(OpenText::document).map(Document::title).filter(words -> !words.isBlank())
                .orElseGet(() -> ((IResource) element).getName());
        label.append(title);
        text.ifPresent(open -> {
            label.append("  " + status(open.document()), StyledString.QUALIFIER_STYLER);
            label.append(findings(open), StyledString.COUNTER_STYLER);
        });
        return label;
    }

    @Override
    public String getText(Object element) {
        return getStyledText(element).getString();
    }

    @Override
    public Image getImage(Object element) {
        if (!(element instanceof IFile)) {
            return Pictures.of(element instanceof IProject ? "library" : "folder").orElse(null);
        }
        Optional<OpenText> text = text(element);
        if (text.filter(open -> has(open, Severity.ERROR)).isPresent()) {
            return Pictures.of("error").orElse(null);
        }
        return Pictures.of(text.filter(open -> open.document() instanceof Library).isPresent() ? "library"
                : "procedure").orElse(null);
    }

    private static Optional<OpenText> text(Object element) {
        return element instanceof IFile file
                ? LiveTexts.get().of(file).map(LiveText::text).or(() -> Shelf.get().of(file)) : Optional.empty();
    }

    private static String status(Document document) {
        if (!(document instanceof Procedure procedure)) {
            return "";
        }
        return procedure.revision().map(revision -> "revision " + revision.number() + ", "
                + revision.status().name().toLowerCase(Locale.ROOT)).orElse("no revision");
    }

    private static String findings(OpenText open) {
        long errors = count(open, Severity.ERROR);
        long warnings = count(open, Severity.WARNING);
        if (errors + warnings == 0) {
            return "";
        }
        return "  " + (errors > 0 ? errors + (errors == 1 ? " error" : " errors") : "")
                + (errors > 0 && warnings > 0 ? ", " : "")
                + (warnings > 0 ? warnings + (warnings == 1 ? " warning" : " warnings") : "");
    }

    private static boolean has(OpenText open, Severity severity) {
        return count(open, severity) > 0;
    }

    private static long count(OpenText open, Severity severity) {
        return open.findings().stream().filter(finding -> finding.severity() == severity).count();
    }
}
