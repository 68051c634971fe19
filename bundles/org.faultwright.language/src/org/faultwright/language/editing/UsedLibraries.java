/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.editing;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.common.util.WrappedException;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.resource.ResourceSet;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.faultwright.language.FileLibraryFinder;
import org.faultwright.language.text.DocumentText;
import org.faultwright.language.text.LibraryText;
import org.faultwright.language.text.TextPackage;

/** Loads the libraries that a text uses, and those they use in turn, into its resource set. */
final class UsedLibraries {
    private final FileLibraryFinder finder = new FileLibraryFinder();

    /** Nearest first, each once; a library that is open in the resource set is taken as it stands there. */
    List<LibraryText> of(DocumentText document) {
        Map<URI, LibraryText> found = new LinkedHashMap<>();
        Deque<DocumentText> toDo = new ArrayDeque<>(List.of(document));
        while (!toDo.isEmpty()) {
            DocumentText user = toDo.poll();
            for (String name : names(user)) {
                library(name, user.eResource()).filter(library -> library != document)
                        .filter(library -> found.putIfAbsent(library.eResource().getURI(), library) == null)
                        .ifPresent(toDo::add);
            }
        }
        return List.copyOf(found.values());
    }

    private static List<String> names(DocumentText user) {
        return user.getUses().stream()
                .flatMap(uses -> NodeModelUtils.findNodesForFeature(uses, TextPackage.Literals.USES_TEXT__LIBRARIES).stream())
                .map(NodeModelUtils::getTokenText).toList();
    }

    private Optional<LibraryText> library(String name, Resource user) {
        ResourceSet resources = user == null ? null : user.getResourceSet();
        if (resources == null || user.getURI() == null) {
            return Optional.empty();
        }
        String from = user.getURI().isFile() ? user.getURI().toFileString() : user.getURI().toString();
        return finder.file(name, from).flatMap(file -> load(file, resources));
    }

    /** A file that vanishes meanwhile counts as not found. */
    private static Optional<LibraryText> load(Path file, ResourceSet resources) {
        try {
            Resource library = resources.getResource(URI.createFileURI(file.toString()), true);
            return library.getContents().stream().filter(LibraryText.class::isInstance).map(LibraryText.class::cast).findFirst();
        } catch (WrappedException unreadable) {
            return Optional.empty();
        }
    }
}
