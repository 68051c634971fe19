/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A failure of the program itself is for the log, in processes of their own: Java sets its log up once. */
class FailureLogTest {
    private static final String NOTHING_SAID = "";

    @TempDir
    private Path folder;

    @Test
    void aFailureStandsInTheLogAndNowhereElse() throws IOException, InterruptedException {
        assertEquals(NOTHING_SAID, run(folder, "fail"));
        String log = Files.readString(folder.resolve("faultwright/failures.log"));
        assertTrue(log.contains("the second press stopped") && log.contains("java.lang.IllegalStateException: no such lamp")
                && log.contains("at org.faultwright.commandline.FailureLogTest"), log);
        // the next one stands below it
        assertEquals(NOTHING_SAID, run(folder, "fail"));
        assertTrue(Files.readString(folder.resolve("faultwright/failures.log")).startsWith(log.substring(0, log.length() / 2)));
        try (Stream<Path> files = Files.list(folder.resolve("faultwright"))) {
            assertEquals(1, files.count(), "nothing is left over beside the log");
        }
    }

    @Test
    void whereNothingFailsNothingIsWritten() throws IOException, InterruptedException {
        assertEquals(NOTHING_SAID, run(folder, "work"));
        assertFalse(Files.exists(folder.resolve("faultwright")));
    }

    @Test
    void aLogThatCannotBeWrittenEndsNothing() throws IOException, InterruptedException {
        Path file = Files.writeString(folder.resolve("file"), "a file, not a folder");
        assertEquals(NOTHING_SAID, run(file, "fail"));
        assertEquals("a file, not a folder", Files.readString(file));
    }

    /** @return all that it printed */
    private static String run(Path state, String what) throws IOException, InterruptedException {
        ProcessBuilder java = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xshare:auto",
                "-cp", System.getProperty("java.class.path"), FailureLogTest.class.getName(), what).redirectErrorStream(true);
        java.environment().put("XDG_STATE_HOME", state.toString());
        Process process = java.start();
        String said = new String(process.getInputStream().readAllBytes());
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), said);
        return said;
    }

    public static void main(String[] arguments) {
        FailureLog.useFromNowOn();
        if (arguments[0].equals("fail")) {
            FailureLog.tell("the second press stopped", new IllegalStateException("no such lamp"));
        }
        System.getLogger("org.faultwright").log(System.Logger.Level.INFO, "not for anybody");
    }
}
