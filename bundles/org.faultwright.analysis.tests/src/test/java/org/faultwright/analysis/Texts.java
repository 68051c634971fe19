/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.Assessment;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/** Tests are written as procedure text; this turns the text into records and findings. */
public final class Texts {
    private static final ProcedureReader ALONE = new ProcedureReader((library, fromFile) -> Optional.empty());

    private Texts() {
    }

    public static Document document(String text) {
        return document("Test.procedure", text);
    }

    public static Document document(String file, String text) {
        return ALONE.read(new SourceText(file, text));
    }

    /** @param libraries name to text */
    public static Document document(String text, Map<String, String> libraries) {
        ProcedureReader reader = new ProcedureReader((library, fromFile) -> Optional.ofNullable(libraries.get(library))
                .map(found -> new SourceText(library + ".procedure", found)));
        return reader.read(new SourceText("Test.procedure", text));
    }

    public static Procedure procedure(String text) {
        return (Procedure) document(text);
    }

    public static Library library(String text) {
        return (Library) document(text);
    }

    public static List<Finding> findings(String text) {
        return new Checker().check(document(text));
    }

    /** The findings of one rule, also those that wait for a name or a word to be mended. */
    public static List<Finding> findings(String rule, String text) {
        return findings(rule, document(text));
    }

    public static List<Finding> findings(String rule, Document document) {
        return findings(rule, document, Optional.empty());
    }

    public static List<Finding> findings(String rule, Document document, Optional<LocalDate> today) {
        List<Rule> one = RuleSet.all().stream().filter(r -> r.header().id().equals(rule)).toList();
        if (one.isEmpty()) {
            throw new IllegalArgumentException("There is no rule " + rule + ".");
        }
        return all(new Checker(one, today), document);
    }

    /** What stands and what waits. */
    public static List<Finding> all(Checker checker, Document document) {
        Assessment assessed = checker.assess(checker.subject(document));
        return Stream.concat(assessed.findings().stream(), assessed.waiting().stream()).sorted(Checker.READING_ORDER).toList();
    }

    public static List<String> messages(String rule, String text) {
        return findings(rule, text).stream().map(Finding::message).toList();
    }
}
