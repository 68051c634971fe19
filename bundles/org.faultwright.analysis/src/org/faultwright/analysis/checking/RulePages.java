/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.RuleHeader;

/** Reads the pages that stand beside the rules; help, the command line and the workbench show them. */
public final class RulePages {
    private static final Pattern EXAMPLE = Pattern.compile("(?ms)^```procedure (bad|good)\\n(.*?)^```$");

    private RulePages() {
    }

    /** The page of a rule; absent when no rule has that id. */
    public static Optional<RulePage> page(String id) {
        return RuleIndex.header(id).flatMap(header -> body(id).map(body -> read(header, body)));
    }

    private static Optional<String> body(String id) {
        try (InputStream page = RulePages.class.getResourceAsStream("/org/faultwright/analysis/rules/pages/" + id + ".md")) {
            return page == null ? Optional.empty()
                    : Optional.of(new String(page.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n"));
        } catch (IOException unreadable) {
            throw new UncheckedIOException("The page of the rule " + id + " cannot be read.", unreadable);
        }
    }

    static RulePage read(RuleHeader header, String body) {
        int prose = body.indexOf("```");
        return new RulePage(header, paragraphs(prose < 0 ? body : body.substring(0, prose)), example(body, "bad"),
                example(body, "good"));
    }

    private static List<String> paragraphs(String prose) {
        return Arrays.stream(prose.split("\\n\\s*\\n")).map(String::strip).filter(p -> !p.isEmpty()).toList();
    }

    private static String example(String body, String which) {
        Matcher example = EXAMPLE.matcher(body);
        while (example.find()) {
            if (example.group(1).equals(which)) {
                return example.group(2);
            }
        }
        return "";
    }
}
