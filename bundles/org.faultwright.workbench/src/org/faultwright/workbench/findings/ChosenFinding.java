/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.faultwright.analysis.Finding;
import org.faultwright.workbench.editor.Editors;

/** The finding that is looked at, and how far its path has been followed. Only for the window's thread. */
public final class ChosenFinding {
    private static final ChosenFinding ONLY = new ChosenFinding();

    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private Finding finding;
    private int step = -1;

    private ChosenFinding() {
    }

    public static ChosenFinding get() {
        return ONLY;
    }

    public Optional<Finding> finding() {
        return Optional.ofNullable(finding);
    }

    /** The index in the path; -1 before the path is followed. */
    public int step() {
        return step;
    }

    public void choose(Finding chosen) {
        if (!chosen.equals(finding)) {
            finding = chosen;
            step = -1;
            listeners.forEach(Runnable::run);
        }
    }

    /** The finding is there no longer. */
    public void forget() {
        if (finding != null) {
            finding = null;
            step = -1;
            listeners.forEach(Runnable::run);
        }
    }

    /** Goes to a step of the path and shows it in the editor; does nothing outside the path. */
    public void goTo(int index) {
        if (finding != null && index >= 0 && index < finding.path().size()) {
            step = index;
            Editors.show(finding.path().get(index).at());
            listeners.forEach(Runnable::run);
        }
    }

    public void addListener(Runnable listener) {
        listeners.add(listener);
    }

    public void removeListener(Runnable listener) {
        listeners.remove(listener);
    }
}
