/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Formula;
import org.faultwright.quantity.measure.Function;

/** What a decide step computes, with the place of each word of it. */
final class FormulaWords {
    /** The functions a formula may call. */
    static final List<String> FUNCTIONS = Arrays.stream(Function.values()).map(Function::words)
            .filter(words -> words.matches("\\p{L}+")).toList();

    /** A reading, a constant or the name of a function. @param of the part it is the word of */
    record Leaf(Formula of, String text, SourceRange at) {
        boolean isReading() {
            return of instanceof Formula.Reading;
        }

        boolean isFunction() {
            return of instanceof Formula.Call;
        }
    }

    private final SourceLocator words;
    private final SourceRange whole;
    private final List<Leaf> leaves = new ArrayList<>();

    private FormulaWords(Written<Formula> compute) {
        this.words = new SourceLocator(compute.at());
        this.whole = compute.at();
        walk(compute.value());
    }

    /** The words of the formula in reading order; none where there is no formula. */
    static List<Leaf> leaves(Step.Calculate step) {
        return step.formula().map(compute -> new FormulaWords(compute).leaves).orElseGet(List::of);
    }

    /** The steps of a graph that give a reading. */
    static List<String> readingSteps(StepGraph graph) {
        return graph.steps().stream().filter(step -> step instanceof Step.Measure || step instanceof Step.Calculate)
                .map(step -> step.name().text()).toList();
    }

    private void walk(Formula part) {
        if (part instanceof Formula.Reading reading) {
            leaf(part, reading.step());
        } else if (part instanceof Formula.Constant constant) {
            leaf(part, constant.quantity().spelling());
        } else if (part instanceof Formula.Negated negated) {
            walk(negated.of());
        } else if (part instanceof Formula.Call call) {
            leaf(part, call.function());
            call.arguments().forEach(this::walk);
        } else if (part instanceof Formula.Sum sum) {
            walk(sum.left());
            walk(sum.right());
        } else if (part instanceof Formula.Difference difference) {
            walk(difference.left());
            walk(difference.right());
        } else if (part instanceof Formula.Product product) {
            walk(product.left());
            walk(product.right());
        } else if (part instanceof Formula.Quotient quotient) {
            walk(quotient.left());
            walk(quotient.right());
        }
    }

    private void leaf(Formula of, String text) {
        leaves.add(new Leaf(of, text, words.next(text).orElse(whole)));
    }
}
