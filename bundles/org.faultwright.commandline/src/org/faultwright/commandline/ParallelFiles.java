/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;

/** Works through files by as many threads as there are cores. */
final class ParallelFiles {
    /** So many answers for each thread wait to be told at most: what a file is made into may be large. */
    private static final int WAITING = 8;

    private ParallelFiles() {
    }

    /** Each thread takes the next file when it has done one. @param tell is called in the order of the files, by the thread that calls this */
    static <T> void each(List<Path> files, Function<Path, T> work, Consumer<T> tell) {
        int threads = Math.min(files.size(), Runtime.getRuntime().availableProcessors());
        if (threads <= 1) {
            files.forEach(file -> tell.accept(work.apply(file)));
            return;
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            Queue<Future<T>> answers = new ArrayDeque<>();
            for (Path file : files) {
                answers.add(pool.submit(() -> work.apply(file)));
                if (answers.size() > threads * WAITING) {
                    tell.accept(answers.remove().get());
                }
            }
            while (!answers.isEmpty()) {
                tell.accept(answers.remove().get());
            }
        } catch (ExecutionException failed) {
            throw failed.getCause() instanceof RuntimeException why ? why : new IllegalStateException(failed.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new CannotProceed("The work was stopped.");
        } finally {
            pool.shutdownNow();
        }
    }
}
