/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.inject.Injector;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.validation.CheckMode;
import org.eclipse.xtext.validation.Issue;
import org.faultwright.analysis.Checker;
import org.faultwright.analysis.Finding;
import org.faultwright.language.editing.FindingIssue;
import org.faultwright.language.text.MeasureText;
import org.faultwright.language.text.OutcomeText;
import org.faultwright.language.text.ProcedureText;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The same language as a resource of the editing services: linked through libraries, checked by the rules alone. */
class EditingResourceTest {
    private static final Injector INJECTOR = new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration();

    @TempDir
    private Path folder;

    private XtextResourceSet resources;

    @BeforeEach
    void open() {
        resources = INJECTOR.getInstance(XtextResourceSet.class);
    }

    static List<Path> demo() {
        return Reading.demo();
    }

    private XtextResource load(Path file) {
        XtextResource resource = (XtextResource) resources.getResource(URI.createFileURI(file.toAbsolutePath().normalize().toString()), true);
        EcoreUtil.resolveAll(resource);
        return resource;
    }

    private XtextResource load(String text) throws IOException {
        XtextResource resource = (XtextResource) resources.createResource(URI.createFileURI(folder.resolve("X.procedure").toString()));
        resource.load(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), Map.of());
        EcoreUtil.resolveAll(resource);
        return resource;
    }

    private static List<Issue> issues(XtextResource resource) {
        return resource.getResourceServiceProvider().getResourceValidator().validate(resource, CheckMode.ALL, CancelIndicator.NullImpl);
    }

    @ParameterizedTest
    @MethodSource("demo")
    void should_link_every_name_of_what_the_project_ships(Path file) {
        XtextResource resource = load(file);

        assertEquals(List.of(), resource.getErrors());
        int references = 0;
        for (TreeIterator<EObject> elements = resource.getAllContents(); elements.hasNext();) {
            for (EObject target : elements.next().eCrossReferences()) {
                references++;
                assertFalse(target.eIsProxy(), target.toString());
            }
        }
        assertTrue(references > 0 || file.endsWith("HarbourNotes.procedure"), "references examined: " + references);
    }

    @Test
    void should_link_across_libraries_and_stay_within_a_step_graph() throws IOException {
        Files.writeString(folder.resolve("Bench.procedure"), "library Bench uses More point Rail routine R { exits done do A { then -> done } }");
        Files.writeString(folder.resolve("More.procedure"), "library More uses Bench instrument Meter { }");
        ProcedureText procedure = (ProcedureText) load("""
                procedure X uses Bench
                measure A "a" { dc voltage at Rail using Meter yes -> A no -> done }""").getContents().get(0);

        MeasureText measure = (MeasureText) procedure.getSteps().get(0);
        assertEquals("Rail", measure.getPoint().getName());
        assertEquals("Meter", measure.getInstrument().getName());
        List<OutcomeText> outcomes = measure.getOutcomes();
        assertEquals(measure, outcomes.get(0).getTarget());
        assertTrue(outcomes.get(1).getTarget().eIsProxy(), "an exit of a routine is no step of the procedure");
    }

    @Test
    void should_leave_unknown_names_to_the_rules() throws IOException {
        XtextResource resource = load("procedure X uses Nowhere check A \"a\" { yes -> Nothing }");

        assertEquals(List.of(), resource.getErrors());
        assertEquals(List.of(), resource.getWarnings());
    }

    @Test
    void should_show_what_the_rules_find_and_nothing_besides() throws IOException {
        String text = "procedure X\n  chek A\ncheck A \"a\" { yes -> Nothing }";
        List<Finding> found = new Checker().check(Reading.document(text));

        List<Issue> shown = issues(load(text));

        assertFalse(found.isEmpty());
        assertEquals(found.stream().map(Finding::rule).toList(), shown.stream().map(Issue::getCode).toList());
        for (Issue issue : shown) {
            FindingIssue finding = assertInstanceOf(FindingIssue.class, issue);
            assertEquals(finding.finding().at().text(), text.substring(issue.getOffset(), issue.getOffset() + issue.getLength()));
        }
        assertTrue(shown.stream().map(Issue::getLineNumber).toList().containsAll(List.of(2, 3)));
    }

    @Test
    void should_take_a_library_as_it_stands_in_the_editor() throws IOException {
        Path bench = Files.writeString(folder.resolve("Bench.procedure"), "library Bench");
        load(bench).reparse("library Bench point Rail");

        ProcedureText procedure = (ProcedureText) load("procedure X uses Bench measure A { dc voltage at Rail yes -> A }").getContents().get(0);

        assertEquals("Rail", ((MeasureText) procedure.getSteps().get(0)).getPoint().getName());
    }
}
