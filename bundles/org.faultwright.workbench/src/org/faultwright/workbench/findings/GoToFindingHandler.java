/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.IConfigurationElement;
import org.eclipse.core.runtime.IExecutableExtension;
import org.faultwright.analysis.Finding;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.look.StatusLine;

/** Goes to the next or previous finding in the text in front, round its ends. */
public final class GoToFindingHandler extends AbstractHandler implements IExecutableExtension {
    private boolean forward = true;

    @Override
    public void setInitializationData(IConfigurationElement element, String property, Object data) {
        forward = !"previous".equals(data);
    }

    @Override
    public Object execute(ExecutionEvent event) {
        Optional<Finding> next = ActiveText.get().place().flatMap(this::next);
        next.ifPresent(finding -> {
            ChosenFinding.get().choose(finding);
            Editors.show(finding.at());
        });
        StatusLine.say(event, next.isPresent() ? Optional.empty() : Optional.of(ActiveText.get().place().isPresent()
                ? "Nothing was found in the text in front." : "No text is in front that was checked. Open one first."));
        return null;
    }

    private Optional<Finding> next(ActiveText.Place place) {
        Comparator<Finding> order = Comparator.comparingInt(finding -> finding.at().offset());
        List<Finding> findings = place.live().text().findings().stream()
                .sorted(forward ? order : order.reversed()).toList();
        return findings.stream().filter(finding -> forward ? finding.at().offset() > place.offset()
                : finding.at().end() < place.offset()).findFirst().or(() -> findings.stream().findFirst());
    }
}
