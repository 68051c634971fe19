/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.editing;

import com.google.inject.Inject;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.scoping.IScope;
import org.eclipse.xtext.scoping.IScopeProvider;
import org.eclipse.xtext.scoping.Scopes;
import org.eclipse.xtext.util.IResourceScopeCache;
import org.faultwright.language.text.DeclarationText;
import org.faultwright.language.text.DocumentText;
import org.faultwright.language.text.ProcedureText;
import org.faultwright.language.text.RoutineText;
import org.faultwright.language.text.TextPackage;

/**
 * What a reference can name: steps and exits of its own step graph, faults of its procedure, declarations
 * of its text and then of the libraries it uses. Built once for each kind of thing and state of the text,
 * so that linking takes time in proportion to the text.
 */
public final class NamesInReach implements IScopeProvider {
    private record Key(EObject from, EClass kind) {
    }

    private final UsedLibraries libraries = new UsedLibraries();
    private final IResourceScopeCache cache;

    @Inject
    NamesInReach(IResourceScopeCache cache) {
        this.cache = cache;
    }

    @Override
    public IScope getScope(EObject context, EReference reference) {
        EClass kind = reference.getEReferenceType();
        EObject from = isOfGraph(kind) ? graph(context) : EcoreUtil2.getContainerOfType(context, DocumentText.class);
        if (from == null || from.eResource() == null) {
            return IScope.NULLSCOPE;
        }
        return cache.get(new Key(from, kind), from.eResource(), () -> scope(from, kind));
    }

    private static boolean isOfGraph(EClass kind) {
        return kind == TextPackage.Literals.STEP_TEXT || kind == TextPackage.Literals.TARGET_TEXT;
    }

    private static EObject graph(EObject context) {
        RoutineText routine = EcoreUtil2.getContainerOfType(context, RoutineText.class);
        return routine != null ? routine : EcoreUtil2.getContainerOfType(context, ProcedureText.class);
    }

    private IScope scope(EObject from, EClass kind) {
        if (from instanceof RoutineText routine) {
            return Scopes.scopeFor(Stream.concat(routine.getSteps().stream(), routine.getExits().stream())
                    .filter(kind::isInstance).toList());
        }
        DocumentText document = (DocumentText) from;
        if (document instanceof ProcedureText procedure && isOfGraph(kind)) {
            return Scopes.scopeFor(procedure.getSteps());
        }
        if (document instanceof ProcedureText procedure && kind == TextPackage.Literals.FAULT_TEXT) {
            return Scopes.scopeFor(procedure.getFaults());
        }
        if (kind == TextPackage.Literals.LIBRARY_TEXT) {
            return Scopes.scopeFor(libraries.of(document));
        }
        IScope shared = Scopes.scopeFor(libraries.of(document).stream().flatMap(library -> declared(library, kind).stream()).toList());
        return Scopes.scopeFor(declared(document, kind), shared);
    }

    private static List<DeclarationText> declared(DocumentText document, EClass kind) {
        return document.getDeclarations().stream().filter(kind::isInstance).toList();
    }
}
