/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.jface.text.IInformationControlCreator;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextHover;
import org.eclipse.jface.text.ITextHoverExtension;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.PathStep;
import org.faultwright.language.server.Explanation;
import org.faultwright.language.server.Explanations;
import org.faultwright.language.server.Markdown;
import org.faultwright.language.server.OpenText;
import org.faultwright.workbench.live.LiveTexts;

/** Says what was found at the words under the pointer, then what they are. */
public final class ProcedureHover implements ITextHover, ITextHoverExtension {
    @Override
    public String getHoverInfo(ITextViewer viewer, IRegion region) {
        return LiveTexts.get().of(viewer.getDocument()).filter(live -> live.isCurrent())
                .map(live -> text(live.text(), region.getOffset())).filter(text -> !text.isEmpty()).orElse(null);
    }

    /** What to show at an offset; empty when there is nothing to say. */
    static String text(OpenText text, int offset) {
        Stream<String> findings = text.findingsAt(offset).stream().map(ProcedureHover::finding);
        Stream<String> words = Explanations.at(text, offset).map(Explanation::markdown).stream();
        return Stream.concat(findings, words).collect(Collectors.joining("\n\n"));
    }

    private static String finding(Finding finding) {
        String severity = finding.severity().name().toLowerCase(java.util.Locale.ROOT);
        String path = finding.path().isEmpty() ? "" : "\nPath: "
                + Markdown.plain(finding.path().stream().map(PathStep::toString).collect(Collectors.joining(" > ")));
        return "**" + severity + "** " + Markdown.plain(finding.message()) + "\n" + Markdown.plain(finding.advice()) + path;
    }

    @Override
    public IRegion getHoverRegion(ITextViewer viewer, int offset) {
        Optional<OpenText> text = LiveTexts.get().of(viewer.getDocument()).map(live -> live.text());
        List<Finding> findings = text.map(open -> open.findingsAt(offset)).orElseGet(List::of);
        if (!findings.isEmpty()) {
            return new Region(findings.get(0).at().offset(), Math.max(1, findings.get(0).at().length()));
        }
        return text.flatMap(open -> Explanations.at(open, offset)).map(Explanation::at)
                .map(at -> (IRegion) new Region(at.offset(), at.length())).orElseGet(() -> new Region(offset, 0));
    }

    @Override
    public IInformationControlCreator getHoverControlCreator() {
        return ExplanationControl::new;
    }
}
