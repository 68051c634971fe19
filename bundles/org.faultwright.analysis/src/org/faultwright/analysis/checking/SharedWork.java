/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;

/**
 * Pieces of work for one answer, done by the thread that wants it and by whatever cores have nothing else to do. Where all are busy that thread does them
 * all; it waits for nobody who has not begun.
 */
final class SharedWork {
    private final int pieces;
    private final IntConsumer work;
    private final AtomicInteger next = new AtomicInteger();
    private int helping;
    private boolean over;
    private Throwable failure;

    private SharedWork(int pieces, IntConsumer work) {
        this.pieces = pieces;
        this.work = work;
    }

    /** What one piece throws ends the others and is thrown here. @param work is called once with each number from 0 to {@code pieces} - 1, in any order */
    static void each(int pieces, IntConsumer work) {
        SharedWork shared = new SharedWork(pieces, work);
        int helpers = Math.min(pieces, Runtime.getRuntime().availableProcessors()) - 1;
        for (int i = 0; i < helpers; i++) {
            ForkJoinPool.commonPool().execute(shared::help);
        }
        shared.take();
        shared.end();
    }

    private void take() {
        try {
            for (int piece = next.getAndIncrement(); piece < pieces; piece = next.getAndIncrement()) {
                work.accept(piece);
            }
        } catch (RuntimeException | Error failed) {
            next.set(pieces);
            fail(failed);
        }
    }

    private synchronized void fail(Throwable failed) {
        failure = failure == null ? failed : failure;
    }

    private void help() {
        synchronized (this) {
            if (over) {
                return;
            }
            helping++;
        }
        take();
        synchronized (this) {
            helping--;
            notifyAll();
        }
    }

    private synchronized void end() {
        over = true;
        boolean interrupted = false;
        while (helping > 0) {
            try {
                wait();
            } catch (InterruptedException asked) {
                // each piece ends by itself soon; half an answer would be none
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        if (failure instanceof Error error) {
            throw error;
        }
        if (failure instanceof RuntimeException failed) {
            throw failed;
        }
    }
}
