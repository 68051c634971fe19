/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.fail;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.eclipse.swt.widgets.Display;

/** Lets the window work until something has come about. */
public final class Waiting {
    private static final long MOST_MILLISECONDS = 30_000;

    private Waiting() {
    }

    /** Fails with what was waited for when it does not come in half a minute. */
    public static void until(String what, BooleanSupplier reached) {
        Display display = Display.getCurrent();
        long end = System.currentTimeMillis() + MOST_MILLISECONDS;
        while (!reached.getAsBoolean()) {
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
        until(what, () -> value.get().isPresent());
        return value.get().orElseThrow();
    }
}
