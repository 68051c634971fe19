/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.language.server.WantedWords;
import org.faultwright.workbench.help.HelpView;

/**
 * Which findings somebody wants to see, and in what order.
 *
 * @param words    each of them in its sentence, its advice, its kind, its weight or the name of its file
 * @param onlyHere only those of the text in front
 */
record FindingsFilter(WantedWords words, Order order, boolean onlyHere) {
    enum Order {
        IN_FRONT("Text in front first"), WEIGHT("Gravest first"), KIND("By kind"), PROCEDURE("By procedure");

        private final String words;

        Order(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    private static final Comparator<Finding> BY_PLACE = Comparator.<Finding, String>comparing(finding -> finding.at().source().fileName())
            .thenComparing(finding -> finding.at().source().name()).thenComparingInt(finding -> finding.at().offset());

    static final FindingsFilter ALL = new FindingsFilter(WantedWords.of(""), Order.IN_FRONT, false);

    /** @param findings in the order of the text in front. @param front the path of that text; absent when none is in front */
    List<Finding> granted(List<Finding> findings, Optional<String> front) {
        Stream<Finding> wanted = findings.stream().filter(finding -> !onlyHere || front.filter(finding.at().source().name()::equals).isPresent())
                .filter(finding -> words.isEmpty() || words.allIn(said(finding)));
        return switch (order) {
            case IN_FRONT -> wanted.toList();
            case WEIGHT -> wanted.sorted(Comparator.comparing(Finding::severity).thenComparing(BY_PLACE)).toList();
            case KIND -> wanted.sorted(Comparator.comparing(Finding::rule).thenComparing(BY_PLACE)).toList();
            case PROCEDURE -> wanted.sorted(BY_PLACE).toList();
        };
    }

    private static String said(Finding finding) {
        String weight = switch (finding.severity()) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case ADVICE -> "advice";
        };
        return String.join("\n", finding.message(), finding.advice(), HelpView.ruleTitle(finding.rule()), weight, finding.at().source().fileName());
    }
}
