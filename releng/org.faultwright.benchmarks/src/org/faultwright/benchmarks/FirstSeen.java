/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Waits until something is seen on a display whose pixels are kept in a file (Xvfb with {@code -fbdir}), and says when that was, in milliseconds since
 * 1970. A hundredth of the screen must have changed: the pointer alone, which turns into one that waits, is nothing. For releng/start-times.sh.
 */
final class FirstSeen {
    private static final int MILLISECONDS_BETWEEN_LOOKS = 5;
    /** Looked at: every so manieth byte; no divisor of a line, so that all columns are. */
    private static final int STEP = 997;
    private static final int OF_THE_SCREEN = 100;

    private FirstSeen() {
    }

    /** @param arguments the file, and the seconds to wait at most */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        long end = System.currentTimeMillis() + 1000 * Long.parseLong(arguments[1]);
        try (FileChannel file = FileChannel.open(Path.of(arguments[0]), StandardOpenOption.READ)) {
            ByteBuffer screen = file.map(FileChannel.MapMode.READ_ONLY, 0, file.size());
            byte[] before = sample(screen);
            System.out.println("looking");
            while (System.currentTimeMillis() < end) {
                if (changed(before, sample(screen)) * OF_THE_SCREEN >= before.length) {
                    System.out.println(System.currentTimeMillis());
                    return;
                }
                Thread.sleep(MILLISECONDS_BETWEEN_LOOKS);
            }
        }
        System.err.println("Nothing was seen in " + arguments[1] + " s.");
        System.exit(1);
    }

    private static byte[] sample(ByteBuffer screen) {
        byte[] sample = new byte[screen.limit() / STEP];
        for (int i = 0; i < sample.length; i++) {
            sample[i] = screen.get(i * STEP);
        }
        return sample;
    }

    private static int changed(byte[] before, byte[] now) {
        int changed = 0;
        for (int i = 0; i < before.length; i++) {
            changed += before[i] == now[i] ? 0 : 1;
        }
        return changed;
    }
}
