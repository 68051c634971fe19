/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.util.Arrays;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.parsing.PlainParser;

/**
 * Loads the grammar and the rules on another core while the call is being understood, where it is about one text: there nobody waits for anything else so long.
 * Whoever reads waits for its end, so that no two threads load the same at the same time.
 */
final class EarlyLoading {
    private static final String TEXT = ".procedure";
    private static volatile Thread loading;

    private EarlyLoading() {
    }

    static void begin(String... call) {
        if (isAboutOneText(call) && Runtime.getRuntime().availableProcessors() > 1) {
            Thread begun = new Thread(EarlyLoading::load, "loading the grammar");
            begun.setDaemon(true);
            begun.start();
            loading = begun;
        }
    }

    static boolean isAboutOneText(String... call) {
        return call.length > 1 && Arrays.stream(call).filter(word -> word.endsWith(TEXT)).count() == 1
                && Arrays.stream(call).skip(1).filter(word -> !word.startsWith("-")).count() == 1;
    }

    private static void load() {
        try {
            PlainParser.grammar();
            RuleSet.all();
        } catch (RuntimeException | LinkageError failed) {
            // whoever reads meets it again, and says so
            FailureLog.tell("loading the grammar early stopped", failed);
        }
    }

    /** To be called before anything is read. */
    static void await() {
        Thread begun = loading;
        if (begun != null) {
            try {
                begun.join();
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
