/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A rule that fails is told in one sentence, the others go on, and where it failed stands in the log alone. */
class FailedRuleTest {
    private static final RuleHeader HEADER = new RuleHeader("fails-always", Severity.ERROR, RuleHeader.Group.NAMES, "Fails.");
    private static final RuleHeader OTHER = new RuleHeader("finds-always", Severity.ADVICE, RuleHeader.Group.NAMES, "Finds.");

    private static final String TEXT = "procedure LampDark \"p\"\nconclude EndHere \"e\" { finds nothing }\n";

    private final Logger log = Logger.getLogger(Checker.class.getName());
    private final List<LogRecord> logged = new ArrayList<>();
    private final Handler listening = new Handler() {
        @Override
        public void publish(LogRecord told) {
            logged.add(told);
        }

        @Override
        public void flush() {
            // nothing waits
        }

        @Override
        public void close() {
            // nothing is open
        }
    };

    @BeforeEach
    void listen() {
        log.setUseParentHandlers(false);
        log.addHandler(listening);
    }

    @AfterEach
    void listenNoMore() {
        log.removeHandler(listening);
        log.setUseParentHandlers(true);
    }

    @Test
    void theOthersGoOnAndTheLogHasTheWholeOfIt() {
        IllegalStateException failure = new IllegalStateException("three\nlines\nof it");
        List<Finding> found = new Checker(List.of(rule(HEADER, failure), rule(OTHER, null)), Optional.empty()).check(Texts.document(TEXT));
        assertEquals(List.of("rule-failed", "finds-always"), found.stream().map(Finding::rule).sorted(Comparator.reverseOrder()).toList());
        assertEquals(1, logged.size());
        assertSame(failure, logged.get(0).getThrown());
        assertTrue(logged.get(0).getMessage().contains("fails-always"), logged.get(0).getMessage());
        found.forEach(finding -> assertFalse(finding.message().contains("\tat ") || finding.message().contains(".java:"), finding.message()));
    }

    @Test
    void aRuleThatNeverEndsItsCallsIsOneThatFails() {
        List<Finding> found = new Checker(List.of(rule(HEADER, new StackOverflowError())), Optional.empty()).check(Texts.document(TEXT));
        assertEquals(List.of("rule-failed"), found.stream().map(Finding::rule).toList());
        assertEquals(1, logged.size());
    }

    @Test
    void whatWorksLogsNothing() {
        new Checker().check(Texts.document(TEXT));
        assertEquals(List.of(), logged);
    }

    private static Rule rule(RuleHeader header, Throwable failure) {
        return new Rule() {
            @Override
            public RuleHeader header() {
                return header;
            }

            @Override
            public void check(Subject subject, Findings findings) {
                if (failure instanceof RuntimeException failed) {
                    throw failed;
                }
                if (failure instanceof Error failed) {
                    throw failed;
                }
                findings.report(subject.document().name().at(), "Found.", "Leave it.");
            }
        };
    }
}
