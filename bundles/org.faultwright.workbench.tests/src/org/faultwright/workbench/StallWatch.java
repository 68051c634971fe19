/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * How long a thread works on one thing without answering to the next, in milliseconds of its own processor time, and what it was at: looked at from
 * another thread once it is at it for {@value #MILLISECONDS_BEFORE_A_LOOK} ms, and again in between.
 */
final class StallWatch {
    private static final int MILLISECONDS_BEFORE_A_LOOK = 30;
    private static final int MILLISECONDS_BETWEEN_LOOKS = 10;
    private static final int MOST_LOOKS = 200;
    private static final int MOST_TOLD = 3;

    private final Thread watched;
    private final List<String> looks = new ArrayList<>();
    private volatile long since;
    private double from;
    private double longest;
    private List<String> inTheLongest = List.of();

    private StallWatch(Thread watched) {
        this.watched = watched;
        Thread looking = new Thread(this::look, "Watching for stalls");
        looking.setDaemon(true);
        looking.start();
    }

    static StallWatch ofThisThread() {
        return new StallWatch(Thread.currentThread());
    }

    void begins() {
        from = worked();
        synchronized (looks) {
            looks.clear();
        }
        since = System.nanoTime();
    }

    /** @return how long it took */
    double ends() {
        since = 0;
        double took = worked() - from;
        if (took > longest) {
            longest = took;
            synchronized (looks) {
                inTheLongest = List.copyOf(looks);
            }
        }
        return took;
    }

    double longest() {
        return longest;
    }

    /** What the thread was at in the longest stall, the most often met first, with how often; empty where that was too short for a look. */
    String where() {
        Map<String, Long> met = inTheLongest.stream().collect(Collectors.groupingBy(Function.identity(), LinkedHashMap::new, Collectors.counting()));
        return met.isEmpty() ? "" : met.entrySet().stream().sorted(Map.Entry.<String, Long>comparingByValue().reversed()).limit(MOST_TOLD)
                .map(one -> one.getKey() + " (" + one.getValue() + ")").collect(Collectors.joining("; ", ", at ", ""));
    }

    private void look() {
        try {
            while (watched.isAlive()) {
                Thread.sleep(MILLISECONDS_BETWEEN_LOOKS);
                long now = since;
                if (now != 0 && System.nanoTime() - now > MILLISECONDS_BEFORE_A_LOOK * 1_000_000L) {
                    String at = words(watched.getStackTrace());
                    synchronized (looks) {
                        if (since == now && looks.size() < MOST_LOOKS) {
                            looks.add(at);
                        }
                    }
                }
            }
        } catch (InterruptedException ending) {
            Thread.currentThread().interrupt();
        }
    }

    /** The innermost call, and the innermost of ours. */
    private static String words(StackTraceElement[] stack) {
        String ours = Arrays.stream(stack).filter(one -> one.getClassName().startsWith("org.faultwright") && !one.getClassName().contains("Watch")
                && !one.getClassName().contains("Test")).findFirst().map(StallWatch::words).orElse("the window itself");
        return stack.length == 0 ? ours : words(stack[0]) + " for " + ours;
    }

    private static String words(StackTraceElement call) {
        return call.getClassName().replaceFirst(".*\\.", "") + "." + call.getMethodName() + ":" + call.getLineNumber();
    }

    private static double worked() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e6;
    }
}
