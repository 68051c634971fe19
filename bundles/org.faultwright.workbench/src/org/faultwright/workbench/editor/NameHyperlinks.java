/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.Optional;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.hyperlink.AbstractHyperlinkDetector;
import org.eclipse.jface.text.hyperlink.IHyperlink;
import org.faultwright.language.server.NameInText;
import org.faultwright.procedure.Name;
import org.faultwright.workbench.live.LiveTexts;

/** Leads from a name to where it is declared. */
public final class NameHyperlinks extends AbstractHyperlinkDetector {
    @Override
    public IHyperlink[] detectHyperlinks(ITextViewer viewer, IRegion region, boolean several) {
        Optional<NameInText> name = LiveTexts.get().of(viewer.getDocument()).filter(live -> live.isCurrent())
                .flatMap(live -> live.text().nameAt(region.getOffset()));
        Optional<Name> declared = name.flatMap(NameInText::declared)
                .filter(target -> !target.at().equals(name.get().name().at()));
        return declared.map(target -> new IHyperlink[] {new ToDeclaration(name.get(), target)}).orElse(null);
    }

    private record ToDeclaration(NameInText name, Name target) implements IHyperlink {
        @Override
        public IRegion getHyperlinkRegion() {
            return new Region(name.name().at().offset(), name.name().at().length());
        }

        @Override
        public String getTypeLabel() {
            return name.kind().word();
        }

        @Override
        public String getHyperlinkText() {
            return "Show the " + name.kind().word() + " " + name.name();
        }

        @Override
        public void open() {
            Editors.show(target.at());
        }
    }
}
