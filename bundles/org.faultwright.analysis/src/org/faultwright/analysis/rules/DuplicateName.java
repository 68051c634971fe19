/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.ShowingText;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.ThingKind;

/** Two things of one kind under one name: the second can never be referred to. */
public final class DuplicateName implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("duplicate-name", Severity.ERROR, Group.NAMES,
            "Two things of one kind have the same name.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        Declarations own = subject.document().own();
        own.byKind().forEach((kind, declared) -> distinct(kind.word(), names(declared), findings));
        own.conditions().forEach(condition -> distinct(ThingKind.VALUE.word() + " of " + condition.name(), condition.values(), findings));
        subject.document().libraries().forEach(library -> {
            Map<ThingKind, List<? extends Declaration>> theirs = library.own().byKind();
            own.byKind().forEach((kind, declared) -> hidden(kind.word(), declared.stream().filter(one -> !ChargeProofs.isPlaceInUnit(one, subject)).toList(),
                    theirs.get(kind), library.name(), findings));
        });
        UsedLibraries.clashes(subject, findings);
        subject.graphs().forEach(graph -> graph(graph, findings));
        subject.procedure().ifPresent(procedure -> procedure(procedure, findings));
    }

    private static void graph(StepGraph graph, Findings findings) {
        List<Name> targets = new ArrayList<>(graph.exits());
        targets.addAll(names(graph.steps()));
        distinct(graph.exits().isEmpty() ? ThingKind.STEP.word() : Reference.Kind.TARGET.word(), targets, findings);
    }

    private static void procedure(Procedure procedure, Findings findings) {
        distinct(ThingKind.FAULT.word(), names(procedure.faults()), findings);
        Map<String, Example> titles = new HashMap<>();
        for (Example example : procedure.examples()) {
            Example first = titles.putIfAbsent(example.title().text(), example);
            if (first == null || !example.isTitled() && example.title().text().isEmpty()) {
                continue;
            }
            if (!example.isTitled() && !first.isTitled()) {
                findings.report(example.title().at(), "Line " + first.at().line() + " says the same: " + example.title() + ".",
                        "Take one of them out, or say what differs between them.",
                        example.variation() ? new Fix[] {new Fix("Take this one out", List.of(ShowingText.without(example)))} : new Fix[0]);
            } else {
                findings.report(example.title().at(), "There are two examples titled \"" + example.title() + "\".",
                        "Give one of them another title, so that a failing example can be found.");
            }
        }
    }

    private static List<Name> names(List<? extends Declaration> declared) {
        return declared.stream().map(Declaration::name).toList();
    }

    private static void distinct(String kind, List<Name> names, Findings findings) {
        Map<String, Name> first = new HashMap<>();
        for (Name name : names) {
            Name before = first.putIfAbsent(name.text(), name);
            if (before != null && !name.text().isEmpty()) {
                String free = free(name.text(), names);
                findings.report(name.at(), "There is another " + kind + " named " + name + " in line "
                        + before.at().line() + ".",
                        "Give one of them another name; whatever refers to " + name + " means the first.",
                        Fix.replacing("Rename this one to " + free, name.at(), free));
            }
        }
    }

    private static String free(String text, List<Name> names) {
        Set<String> taken = new HashSet<>();
        names.forEach(name -> taken.add(name.text()));
        int number = 2;
        while (taken.contains(text + number)) {
            number++;
        }
        return text + number;
    }

    private static void hidden(String kind, List<? extends Declaration> own, List<? extends Declaration> theirs,
            Name library, Findings findings) {
        Set<String> shared = new HashSet<>();
        theirs.forEach(one -> shared.add(one.name().text()));
        own.stream().map(Declaration::name).filter(name -> shared.contains(name.text()))
                .forEach(name -> findings.report(Severity.WARNING, name.at(),
                        "The " + kind + " " + name + " hides the one of the same name in the library " + library + ".",
                        "Use the library's, or give this one another name."));
    }
}
