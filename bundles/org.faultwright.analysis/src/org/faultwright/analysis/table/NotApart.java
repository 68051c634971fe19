/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.faultwright.analysis.faults.FaultSignature;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.trace.Ambiguity;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Step;

/**
 * Faults that nothing tells apart, side by side with what would.
 *
 * @param faults     two or more
 * @param foundAsOne whether one conclusion finds all of them, so that they need not be told apart
 * @param would      the steps that would tell some of them apart
 */
public record NotApart(List<Fault> faults, boolean foundAsOne, List<Separating> would) {
    private static final int MOST_NAMED = 4;

    /**
     * A step that would tell them apart.
     *
     * @param isAsked whether the steps lead to it, so that only words are missing in the table
     * @param shown   by the name of each fault what it shows there; empty where nothing says it
     */
    public record Separating(String step, boolean isAsked, Map<String, String> shown) {
        /** What is to be done, as a sentence. */
        public String told() {
            List<String> silent = shown.entrySet().stream().filter(entry -> entry.getValue().isEmpty()).map(Map.Entry::getKey).toList();
            String says = shown.entrySet().stream().filter(entry -> !entry.getValue().isEmpty())
                    .collect(Collectors.groupingBy(Map.Entry::getValue, LinkedHashMap::new, Collectors.mapping(Map.Entry::getKey, Collectors.toList())))
                    .entrySet().stream().map(entry -> entry.getKey() + " for " + names(entry.getValue())).collect(Collectors.joining("; "));
            return isAsked ? "\"" + step + "\" may tell them apart: say what shows there for " + names(silent) + ". So far: " + says + "."
                    : "\"" + step + "\" would tell them apart: " + says + ". No step leads there yet.";
        }
    }

    static NotApart of(Ambiguity.Group group, Ambiguity ambiguity, FaultTable table, boolean laidOut) {
        List<Separating> would = new ArrayList<>();
        if (laidOut) {
            ambiguity.unusedThatSeparate(group).forEach(step -> would.add(new Separating(step.name().text(), false, shown(group, step, table))));
        }
        ambiguity.silentForSome(group).forEach(step -> would.add(new Separating(step.name().text(), true, shown(group, step, table))));
        return new NotApart(group.faults(), group.acknowledged(), List.copyOf(would));
    }

    private static Map<String, String> shown(Ambiguity.Group group, Step step, FaultTable table) {
        Map<String, String> shown = new LinkedHashMap<>();
        for (Fault fault : group.faults()) {
            FaultSignature cell = table.cell(fault, step);
            shown.put(fault.name().text(), String.join(" or ", cell.outcomes()));
        }
        return shown;
    }

    /** The names of the faults, at most a few of them. */
    public String named() {
        return names(faults.stream().map(fault -> fault.name().text()).toList());
    }

    private static String names(List<String> names) {
        List<String> some = names.stream().limit(MOST_NAMED).map(name -> '"' + name + '"').toList();
        int more = names.size() - some.size();
        return more > 0 ? String.join(", ", some) + " and " + more + " more"
                : some.size() < 2 ? String.join("", some) : String.join(", ", some.subList(0, some.size() - 1)) + " and " + some.get(some.size() - 1);
    }

    /** What there is to say of them, a sentence each. */
    public List<String> told() {
        List<String> told = new ArrayList<>();
        told.add(foundAsOne ? "Nothing tells " + named() + " apart; one conclusion finds them together, so that nothing need."
                : "Nothing tells " + named() + " apart.");
        would.forEach(one -> told.add(one.told()));
        if (would.isEmpty() && !foundAsOne) {
            told.add("Add a step at which they show different outcomes, or one conclusion that finds them together.");
        }
        return List.copyOf(told);
    }
}
