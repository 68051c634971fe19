/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.fail;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;

/** Lets the window work until something has come about. */
public final class Waiting {
    private static final long MOST_MILLISECONDS = 30_000;
    private static final int MILLISECONDS_BETWEEN_LOOKS = 500;

    private Waiting() {
    }

    /** Fails with what was waited for when it does not come in half a minute. */
    public static void until(String what, BooleanSupplier reached) {
        Display display = Display.getCurrent();
        long end = System.currentTimeMillis() + MOST_MILLISECONDS;
        boolean[] failed = {false};
        Runnable look = new Runnable() {
            private Optional<Shell> seen = Optional.empty();

            @Override
            public void run() {
                // its own loop would wait for somebody to read it; a test that expects it answers it at once
                Optional<Shell> told = Arrays.stream(display.getShells()).filter(shell -> shell.getText().equals(PlainErrors.TITLE)).findFirst();
                if (told.isPresent() && told.equals(seen)) {
                    failed[0] = true;
                    told.get().close();
                }
                seen = told;
                display.timerExec(MILLISECONDS_BETWEEN_LOOKS, this);
            }
        };
        display.timerExec(MILLISECONDS_BETWEEN_LOOKS, look);
        try {
            work(display, what, reached, end, failed);
        } finally {
            display.timerExec(-1, look);
        }
    }

    private static void work(Display display, String what, BooleanSupplier reached, long end, boolean[] failed) {
        while (!reached.getAsBoolean()) {
            if (failed[0]) {
                fail("a part of the program failed while it was waited until " + what + "; see the log of the workspace");
            }
            if (System.currentTimeMillis() > end) {
                fail("waited in vain until " + what);
            }
            if (!display.readAndDispatch()) {
                display.timerExec(20, () -> { });
                display.sleep();
            }
        }
    }

    /** The value once there is one. */
    public static <T> T untilPresent(String what, Supplier<Optional<T>> value) {
        // asked no second time: what was there may be gone by then
        AtomicReference<Optional<T>> found = new AtomicReference<>(Optional.empty());
        until(what, () -> {
            found.set(value.get());
            return found.get().isPresent();
        });
        return found.get().orElseThrow();
    }
}
