/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.faultwright.language.blocks.BlockWords;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.ThingKind;
import org.faultwright.procedure.Waveform;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Units;

/** What could be written at the cursor: words of the language, names that fit, units that fit. */
public final class Proposals {
    private static final Set<String> SETTINGS = Set.of("needs", "sets", "proves");
    private static final Set<String> LISTS = Set.of("needs", "unit", "sets", "proves", "notes", "handles", "hazards", "covers",
            "shows", "remedy", "finds", "uses", "tries", "tests");
    private static final Set<String> INSIDE_ONLY = Set.of("begin at", "tools");
    /** Of a proposal, as "ac voltage rms" has. */
    private static final int MOST_WORDS = 3;
    private static final int MOST_WORDS_BEFORE_OR = 12;
    private static final Set<String> ARROWS = Set.of("->", "else");
    private static final List<String> TIME_WORDS = List.of("takes", "wait", "within");

    private final OpenText text;
    private final Document document;
    private final Scope scope;
    private final TextBefore before;
    private final int offset;
    private final List<Proposal> found = new ArrayList<>();

    private Proposals(OpenText text, TextBefore before, int offset) {
        this.text = text;
        this.document = text.document();
        this.scope = document.scope();
        this.before = before;
        this.offset = offset;
    }

    /** The proposals at an offset: what begins with the letters typed, or with them and the words before them, as "dc voltage" does with "dc volt"; none in quoted text. */
    public static List<Proposal> at(OpenText text, int offset) {
        int at = Math.max(0, Math.min(offset, text.content().length()));
        TextBefore before = new TextBefore(text.content(), at);
        if (before.isInText()) {
            return List.of();
        }
        List<Proposal> all = new ArrayList<>();
        Optional<TextBefore> typed = Optional.of(before);
        for (int words = 0; words < MOST_WORDS && typed.isPresent(); words++) {
            // more words of one proposal fit better than the last word alone
            all.addAll(0, new Proposals(text, typed.get(), at).fitting());
            typed = typed.get().withTheWordBefore();
        }
        all.addAll(new Proposals(text, before, at).goingOn(all));
        return all.stream().distinct().toList();
    }

    /** A word that is half typed may go on with what was begun: any word of the language that can stand in there, and that nothing proposed begins with. */
    private List<Proposal> goingOn(List<Proposal> proposed) {
        if (!before.typed().isEmpty() && !ARROWS.contains(before.back(1).text())) {
            words(BlockWords.of(before.block()).stream().filter(word -> word.startsWith(before.typed())
                    && proposed.stream().noneMatch(other -> (other.label() + " ").startsWith(word + " "))).toList(), "");
        }
        return found;
    }

    private List<Proposal> fitting() {
        collect();
        String typed = before.typed().toLowerCase(Locale.ROOT);
        return found.stream().filter(proposal -> proposal.label().toLowerCase(Locale.ROOT).startsWith(typed)).toList();
    }

    private void collect() {
        TextBefore.Token last = before.back(1);
        if (before.isBehindANumber()) {
            units();
            return;
        }
        if (isInSetUp(last)) {
            names(scope.conditions(), ThingKind.CONDITION);
            return;
        }
        String list = last.text().equals(",") ? before.lastOf(LISTS) : last.quoted() ? "" : last.text();
        if (afterKeyword(list) || isValue() || isResult()) {
            return;
        }
        items();
    }

    /** Right behind the brace or a comma of a set-up. */
    private boolean isInSetUp(TextBefore.Token before) {
        return this.before.part().equals("setup") && (before.text().equals("{") || before.text().equals(","));
    }

    private boolean afterKeyword(String word) {
        switch (word) {
            case "->", "else" -> targets();
            case "needs", "sets", "proves" -> names(scope.conditions(), ThingKind.CONDITION);
            case "unit" -> names(scope.setUps(), ThingKind.SET_UP);
            case "notes" -> names(scope.notes(), ThingKind.NOTE);
            case "handles" -> names(scope.parts(), ThingKind.PART);
            case "using", "tries" -> names(scope.instruments(), ThingKind.INSTRUMENT);
            case "by", "perform" -> names(scope.routines(), ThingKind.ROUTINE);
            case "against" -> names(scope.points(), ThingKind.POINT);
            case "finds", "of" -> names(faults(), ThingKind.FAULT);
            case "remedy" -> names(steps().stream().filter(Step.Do.class::isInstance).toList(), ThingKind.STEP);
            case "shows" -> names(steps(), ThingKind.STEP);
            case "tests" -> words(Arrays.stream(ProtectiveTest.values()).map(ProtectiveTest::word).toList(), "protective test");
            case "covers", "hazards" -> words(Arrays.stream(Hazard.values()).map(Hazard::word).toList(), "hazard");
            case "uses" -> words(libraries(), "library");
            case "expects" -> words(List.of("at least", "at most", "over", "under"), "limit");
            case "at" -> afterAt();
            default -> {
                return afterWordOfDeclaration(word);
            }
        }
        return true;
    }

    private boolean afterWordOfDeclaration(String word) {
        switch (before.block() + " " + word) {
            case "calculate value", "calculate +", "calculate -", "calculate *", "calculate /", "calculate (" -> names(steps().stream()
                    .filter(step -> step instanceof Step.Measure || step instanceof Step.Calculate).toList(), ThingKind.STEP);
            case "condition starts", "condition ends", "condition when", "condition becomes" -> words(ownValues(), "value");
            case "equipment class" -> words(Arrays.stream(ProtectionClass.values()).map(Enum::name).toList(), "protection class");
            case "decision rule" -> words(List.of("simple", "guarded", "risk"), "decision rule");
            case "point waveform" -> words(Arrays.stream(Waveform.values()).map(Waveform::word).toList(), "waveform");
            default -> {
                if (!before.block().equals("note") || !before.back(2).text().equals("note")) {
                    return false;
                }
                words(small(SignalWord.values()), "signal word");
            }
        }
        return true;
    }

    /** Of the condition that is declared at the cursor. */
    private List<String> ownValues() {
        return document.own().conditions().stream().filter(one -> one.at().offset() < offset && offset <= one.at().end()).findFirst()
                .map(one -> one.values().stream().map(Name::text).toList()).orElseGet(List::of);
    }

    private static List<String> small(Enum<?>... values) {
        return Arrays.stream(values).map(one -> one.name().toLowerCase(Locale.ROOT)).toList();
    }

    private void afterAt() {
        String two = before.back(2).text();
        if (two.equals("begin") || two.equals("ends")) {
            names(two.equals("ends") ? conclusions() : steps(), ThingKind.STEP);
        } else if (before.part().equals("measure")) {
            names(scope.points(), ThingKind.POINT);
        } else {
            names(scope.indicators(), ThingKind.INDICATOR);
        }
    }

    /** After a condition's name its values follow. */
    private boolean isValue() {
        TextBefore.Token last = before.back(1);
        String two = before.back(2).text();
        boolean setting = isInSetUp(before.back(2)) || SETTINGS.contains(two) || two.equals(",") && SETTINGS.contains(before.lastOf(LISTS));
        if (!setting || !last.isWord()) {
            return false;
        }
        Optional<Condition> condition = scope.condition(new Name(last.text(), document.at()));
        condition.ifPresent(known -> words(known.values().stream().map(Name::text).toList(), "value"));
        return condition.isPresent();
    }

    /** After a step's name in a signature or an example its results follow. */
    private boolean isResult() {
        String part = before.part();
        TextBefore.Token last = before.back(1);
        if (!part.equals("fault") && !part.equals("example") || !last.isWord()) {
            return false;
        }
        Optional<Step> step = last.text().equals("or") ? stepBefore() : step(last.text());
        step.ifPresent(known -> words(Stream.concat(known.outcomes().stream().map(Outcome::key), codes(known)).distinct().toList(), "result"));
        return step.isPresent();
    }

    private Optional<Step> step(String name) {
        return steps().stream().filter(one -> one.name().text().equals(name)).findFirst();
    }

    /** The step of which one thing it can show has been said. */
    private Optional<Step> stepBefore() {
        for (int back = 2; back < MOST_WORDS_BEFORE_OR; back++) {
            Optional<Step> step = step(before.back(back).text());
            if (step.isPresent()) {
                return step;
            }
        }
        return Optional.empty();
    }

    private void items() {
        String part = before.part();
        if (before.isAtTheBeginning()) {
            Snippets.texts().forEach(this::whole);
            return;
        }
        for (String item : Snippets.items(part)) {
            add(item, "", item + " ");
        }
        if (Step.KEYWORDS.contains(part)) {
            enclosing().ifPresent(this::results);
        } else if (part.equals("example")) {
            names(steps(), ThingKind.STEP);
        } else if (part.isEmpty() || part.equals("routine")) {
            Snippets.whole().forEach((word, whole) -> {
                if (part.isEmpty() || Step.KEYWORDS.contains(word) || INSIDE_ONLY.contains(word)) {
                    whole(word, whole);
                }
            });
        }
        if (part.equals("measure") && before.back(1).text().equals("{") || before.back(1).text().equals("adjust") || part.equals("instrument")) {
            words(Arrays.stream(QuantityKind.values()).map(QuantityKind::words).toList(), "quantity");
        }
    }

    /** The results that the step around the cursor still lacks. */
    private void results(Step step) {
        List<String> there = step.outcomes().stream().filter(outcome -> !outcome.isUnderstood()).map(Outcome::key).toList();
        List<String> wanted = new ArrayList<>();
        if (step instanceof Step.Observe) {
            codes(step).forEach(wanted::add);
            wanted.add("anything else");
        } else if (step instanceof Step.Perform perform) {
            perform.routine().flatMap(scope::routine).ifPresent(routine -> routine.exits()
                    .forEach(exit -> wanted.add(exit.text())));
        } else if (step instanceof Step.Measure measure && !measure.rows().isEmpty()) {
            wanted.addAll(List.of(Step.ALL_WITHIN, Step.ANY_OUTSIDE));
            measure.rows().forEach(row -> wanted.add(row.outside()));
        } else if (step instanceof Step.Measure measure && measure.expects().isPresent()
                || step instanceof Step.Calculate calculate && calculate.expects().isPresent()) {
            wanted.addAll(List.of(Step.BELOW, Step.WITHIN, Step.ABOVE, Step.OUTSIDE, Step.DOUBTFUL));
        } else if (step.answer() == Step.Answer.SEEN) {
            wanted.addAll(List.of("yes", "no"));
        } else if (step instanceof Step.Measure && there.isEmpty()) {
            wanted.add("then");
        } else if (step instanceof Step.Do) {
            wanted.add("then");
        }
        wanted.stream().filter(result -> !there.contains(result))
                .forEach(result -> add(result + " ->", "result", result + " -> "));
    }

    /** What the indicator that is observed can show. */
    private Stream<String> codes(Step step) {
        return step instanceof Step.Observe observe ? observe.indicator().flatMap(scope::indicator).map(Indicator::codes).orElseGet(List::of).stream()
                .map(code -> code.pattern().text()) : Stream.empty();
    }

    private void units() {
        if (before.back(2).text().equals("revision")) {
            words(small(Revision.Status.values()), "status");
            return;
        }
        Optional<QuantityKind> kind = TIME_WORDS.contains(before.back(2).text())
                ? Optional.of(QuantityKind.TIME)
                : enclosing().filter(Step.Measure.class::isInstance).flatMap(step -> ((Step.Measure) step).kind())
                        .map(written -> written.value());
        List<String> fitting = kind.map(Units::of).orElseGet(Units::all).stream().map(Units::spelling)
                .filter(spelling -> !Character.isDigit(spelling.codePointAt(0))).toList();
        if (before.part().equals("instrument")) {
            words(List.of("digits"), "accuracy");
        }
        fitting.forEach(unit -> add(unit, kind.map(QuantityKind::words).orElse("unit"), ThingKind.UNIT, "", unit));
    }

    private void targets() {
        StepGraph graph = graph();
        names(graph.writtenSteps(), ThingKind.STEP);
        names(graph.leadsToFaults(), ThingKind.FAULT);
        words(graph.exits().stream().map(Name::text).toList(), "exit");
    }

    private StepGraph graph() {
        List<StepGraph> graphs = document.graphs();
        return graphs.stream().filter(graph -> before.inRoutine() && graph.at().offset() <= offset
                && offset <= graph.at().end() && !(graph instanceof Procedure)).findFirst()
                .orElseGet(() -> graphs.isEmpty() ? emptyRoutine() : graphs.get(0));
    }

    private StepGraph emptyRoutine() {
        return new org.faultwright.procedure.Routine(document.name(), "", List.of(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
                document.at());
    }

    private Optional<Step> enclosing() {
        return document.graphs().stream().flatMap(graph -> graph.writtenSteps().stream())
                .filter(step -> step.at().offset() <= offset && offset <= step.at().end()).findFirst();
    }

    private List<Step> steps() {
        return graph().writtenSteps();
    }

    private List<Step> conclusions() {
        return graph().namedSteps().stream().filter(Step.Conclude.class::isInstance).toList();
    }

    private List<? extends Declaration> faults() {
        return document instanceof Procedure procedure ? procedure.faults() : List.of();
    }

    private List<String> libraries() {
        return NearbyLibraries.of(text.source().name());
    }

    private void names(List<? extends Declaration> declared, ThingKind kind) {
        Function<Declaration, String> keyword = one -> one instanceof Step step ? step.keyword() : kind.keyword();
        declared.forEach(one -> add(one.name().text(), one.title(), kind, keyword.apply(one), one.name().text()));
    }

    /** A whole part with its blanks. */
    private void whole(String word, String insert) {
        String keyword = word.split(" ")[0];
        add(word, "with its blanks", ThingKind.begunBy(keyword), keyword, insert);
    }

    private void words(List<String> words, String detail) {
        words.forEach(word -> add(word, detail, word));
    }

    private void add(String label, String detail, String insert) {
        add(label, detail, ThingKind.WORDS, "", insert);
    }

    private void add(String label, String detail, ThingKind kind, String keyword, String insert) {
        if (!label.isBlank()) {
            found.add(new Proposal(label, detail, kind, keyword, insert, before.from(), offset));
        }
    }
}
