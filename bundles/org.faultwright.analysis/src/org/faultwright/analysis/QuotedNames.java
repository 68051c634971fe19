/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.StepGraph;

/**
 * Puts the names of a text that occur in a message into quotation marks, with the value where a condition is said to have
 * one: {@code "Rail24" needs "Supply on"}. Without the marks a name such as {@code Both} or {@code Look} reads as a part
 * of the sentence. It is done here, for all rules alike, so that none can forget it. What stands in quotation marks
 * already is left as it is.
 */
public final class QuotedNames {
    private static final Pattern PART = Pattern.compile("\"[^\"]*\"|[\\p{L}_][\\p{L}\\p{N}_]*(?:/[\\p{L}_][\\p{L}\\p{N}_]*)*");
    private static final Pattern VALUE = Pattern.compile(" ([\\p{L}_][\\p{L}\\p{N}_]*)");
    private static final Pattern AFTER_NUMBER = Pattern.compile("(?s).*[0-9] ");
    private static final Pattern PLAIN_WORD = Pattern.compile("\\p{Lu}\\p{Ll}*");
    /** Words that begin sentences; a step with such a name is not worth a wrong mark in all the others. */
    private static final Set<String> BEGIN_SENTENCES = Set.of("A", "An", "The", "No", "In", "After", "With", "There", "What", "Whatever",
            "Every", "Each", "Nothing", "This", "One", "Several");

    private final Map<String, Set<String>> valuesByName = new HashMap<>();

    QuotedNames(Document document) {
        add(document.name());
        add(document);
        document.libraries().forEach(library -> {
            add(library.name());
            add(library);
        });
        if (document instanceof Procedure procedure) {
            procedure.faults().stream().map(Fault::name).forEach(this::add);
        }
    }

    /** Those of the document that rules look at. */
    public static QuotedNames of(Subject subject) {
        return subject.shared(QuotedNames.class, one -> new QuotedNames(one.document()));
    }

    private void add(Document document) {
        Declarations own = document.own();
        own.all().forEach(one -> add(one.name()));
        for (Condition condition : own.conditions()) {
            condition.values().forEach(value -> valuesByName.computeIfPresent(condition.name().text(), (name, values) -> {
                values.add(value.text());
                return values;
            }));
        }
        for (StepGraph graph : document.graphs()) {
            graph.steps().forEach(step -> add(step.name()));
            graph.exits().forEach(this::add);
        }
    }

    /** Small letters alone read as English; the rules quote such a name themselves where they must. */
    private void add(Name name) {
        if (!name.text().equals(name.text().toLowerCase(Locale.ROOT)) || name.text().matches(".*[0-9_].*")) {
            valuesByName.computeIfAbsent(name.text(), text -> new HashSet<>());
        }
    }

    /** A finding with the names in its sentences in quotation marks. */
    public Finding in(Finding finding) {
        return new Finding(finding.rule(), finding.severity(), finding.at(), inMessage(finding.message()), inAdvice(finding.advice()),
                finding.path(), finding.fixes().stream().map(fix -> new Fix(inAdvice(fix.title()), fix.edits())).toList());
    }

    /** Whether every sentence is quoted in the same way. */
    public boolean isSame(QuotedNames other) {
        return valuesByName.equals(other.valuesByName);
    }

    /** What is wrong, with its names in quotation marks. */
    String inMessage(String message) {
        return in(message, false);
    }

    /** What to do; it begins with a verb, which is no name even where a step is called so. */
    String inAdvice(String advice) {
        return in(advice, true);
    }

    private String in(String text, boolean verbFirst) {
        StringBuilder quoted = new StringBuilder();
        Matcher part = PART.matcher(text);
        int from = 0;
        while (part.find(from)) {
            quoted.append(text, from, part.start());
            String word = part.group();
            from = part.end();
            if (!isName(word, text.substring(0, part.start()), verbFirst)) {
                quoted.append(word);
                continue;
            }
            quoted.append('"').append(word);
            Matcher value = VALUE.matcher(text).region(from, text.length());
            if (value.lookingAt() && valuesByName.get(word.substring(word.lastIndexOf('/') + 1)).contains(value.group(1))) {
                quoted.append(value.group());
                from = value.end();
            }
            quoted.append('"');
        }
        return quoted.append(text.substring(from)).toString();
    }

    private boolean isName(String word, String before, boolean verbFirst) {
        if (word.startsWith("\"") || !Stream.of(word.split("/")).allMatch(valuesByName::containsKey)) {
            return false;
        }
        if (AFTER_NUMBER.matcher(before).matches() && word.length() <= 2) {
            return false;
        }
        boolean first = before.isEmpty() || before.matches("(?s).*[.:;?] ");
        return !first || !(BEGIN_SENTENCES.contains(word) || verbFirst && PLAIN_WORD.matcher(word).matches());
    }
}
