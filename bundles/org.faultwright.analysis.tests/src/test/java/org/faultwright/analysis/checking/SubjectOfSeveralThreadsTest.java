/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.OnDemand;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.Subject;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is asked by several threads at once is computed once, and answered as one thread answers it. */
@Timeout(300)
class SubjectOfSeveralThreadsTest {
    private static final int THREADS = 6;

    @Test
    void whatFailedIsComputedAgainForTheNext() {
        OnDemand<String> word = new OnDemand<>();
        assertThrows(IllegalStateException.class, () -> word.get(() -> {
            throw new IllegalStateException("not now");
        }));
        assertEquals("dead", word.get(() -> "dead"));
        assertEquals("dead", word.get(() -> "live"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"../../procedures-demo/OllenbyFaintLabels.procedure", "../../procedures-demo/HavendyneColdIron.procedure",
        "../../procedures-demo/library/HarbourBench.procedure", "src/test/resources/flawed/ChangedLater.procedure"})
    void rulesFindTheSameWhicheverIsAskedFirst(String file) throws IOException, InterruptedException, ExecutionException {
        Document document = ProcedureReader.overFiles().read(Path.of(file));
        List<Finding> expected = new Checker().check(document);
        ExecutorService pool = Executors.newFixedThreadPool(THREADS);
        try {
            for (int seed = 0; seed < 12; seed++) {
                Subject subject = new Subject(document, Optional.empty());
                List<Future<?>> asked = new ArrayList<>();
                for (int thread = 0; thread < THREADS; thread++) {
                    List<Rule> rules = new ArrayList<>(RuleSet.all());
                    Collections.shuffle(rules, new Random(seed * THREADS + thread));
                    asked.add(pool.submit(() -> rules.forEach(rule -> Checker.run(rule, subject))));
                }
                for (Future<?> one : asked) {
                    one.get();
                }
                assertEquals(expected, new Checker().check(subject));
            }
        } finally {
            pool.shutdownNow();
            assertTrue(pool.awaitTermination(60, TimeUnit.SECONDS));
        }
    }
}
