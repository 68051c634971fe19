/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is published stays as it is until somebody means to change it. To renew the files after such a
 * change, run the tests with {@code -Dfaultwright.renew=true} and look at the difference before committing.
 */
class GoldenTest {
    private static final Path FOLDER = Path.of("src", "test", "resources", "org", "faultwright", "publish", "golden");

    @ParameterizedTest
    @ValueSource(strings = { "tree-json", "card-html" })
    void should_publish_as_before(String export) throws IOException {
        PublishedFiles published = Samples.publish(export, Samples.everything());
        String now = new String(published.bytes(), StandardCharsets.UTF_8);
        Path golden = FOLDER.resolve(published.fileName());
        if (Boolean.getBoolean("faultwright.renew")) {
            Files.createDirectories(FOLDER);
            Files.writeString(golden, now);
        }
        assertEquals(Files.readString(golden).replace("\r\n", "\n"), now);
    }
}
