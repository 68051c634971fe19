/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.SourceText;

/**
 * A text as it stood at one moment, with what was read and found in it. Every editing service is a
 * function of it, so that it may be asked from any thread.
 */
public final class OpenText {
    private final Document document;
    private final Subject subject;
    private final List<Finding> findings;
    private final List<Finding> found;
    private final boolean full;

    /**
     * @param findings what is told
     * @param found    all that was found, with what is not told while somebody writes
     * @param full     whether every rule has run, so that it may be published
     */
    OpenText(Document document, Subject subject, List<Finding> findings, List<Finding> found, boolean full) {
        this.document = document;
        this.subject = subject;
        this.findings = List.copyOf(findings);
        this.found = List.copyOf(found);
        this.full = full;
    }

    public SourceText source() {
        return document.source();
    }

    public String content() {
        return source().content();
    }

    public Document document() {
        return document;
    }

    /** Whether it uses that library, directly or through another one, so that a change there may change what is found here. */
    public boolean uses(OpenText library) {
        return library.document() instanceof Library && document.libraries().stream()
                .anyMatch(used -> used.name().text().equals(library.document().name().text()));
    }

    /** With the results that rules computed, for whoever explains them. Only one thread may use it at a time. */
    Subject subject() {
        return subject;
    }

    /** What was found in this file itself, in reading order. */
    public List<Finding> findings() {
        return findings;
    }

    /** All that was found by the rules that have run, with what is not told before a pause in writing. */
    public List<Finding> found() {
        return found;
    }

    /** Whether every rule has run. */
    public boolean isFull() {
        return full;
    }

    /** The findings whose words hold this offset, the shortest first. */
    public List<Finding> findingsAt(int offset) {
        return findings.stream().filter(finding -> finding.at().offset() <= offset && offset <= finding.at().end())
                .sorted((a, b) -> Integer.compare(a.at().length(), b.at().length())).toList();
    }

    /** The name that stands at this offset, declared or referred to. */
    public Optional<NameInText> nameAt(int offset) {
        return NamesInText.of(this).at(offset);
    }
}
