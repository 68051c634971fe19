/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.editing;

import java.util.List;
import java.util.Optional;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.validation.CheckMode;
import org.eclipse.xtext.validation.IResourceValidator;
import org.eclipse.xtext.validation.Issue;
import org.faultwright.analysis.Checker;
import org.faultwright.language.FileLibraryFinder;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.SourceText;

/**
 * Shows in the editing services exactly what the rules find, broken words included, and nothing besides:
 * the text is read and checked as everywhere else.
 */
public final class FindingsValidator implements IResourceValidator {
    private final Checker checker = new Checker();
    private final FileLibraryFinder finder = new FileLibraryFinder();

    @Override
    public List<Issue> validate(Resource resource, CheckMode mode, CancelIndicator cancelled) {
        Optional<SourceText> text = text(resource);
        if (text.isEmpty() || cancelled != null && cancelled.isCanceled()) {
            return List.of();
        }
        ProcedureReader reader = new ProcedureReader((library, from) -> open(resource, library, from)
                .or(() -> finder.find(library, from)));
        return checker.check(reader.read(text.get())).stream()
                .filter(finding -> finding.at().source().name().equals(text.get().name()))
                .map(finding -> (Issue) new FindingIssue(finding)).toList();
    }

    /** A library that is open in the same resource set counts as it stands there. */
    private Optional<SourceText> open(Resource user, String library, String from) {
        return finder.file(library, from).flatMap(file -> Optional.ofNullable(user.getResourceSet())
                .map(resources -> resources.getResource(URI.createFileURI(file.toString()), false))
                .flatMap(FindingsValidator::text));
    }

    private static Optional<SourceText> text(Resource resource) {
        if (!(resource instanceof XtextResource parsed) || resource.getURI() == null) {
            return Optional.empty();
        }
        String name = resource.getURI().isFile() ? resource.getURI().toFileString() : resource.getURI().toString();
        return Optional.ofNullable(parsed.getParseResult()).map(IParseResult::getRootNode)
                .map(root -> new SourceText(name, root.getText()));
    }
}
