/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.faultwright.analysis.checking.RulePages;
import org.faultwright.language.kept.KeptPages;

/** Links from the rule of a finding to its page, for an editor that can open one. Where there is no page to open there is no link. */
final class RuleLinks {
    /** For an editor that opens none. */
    static final RuleLinks NONE = new RuleLinks(new KeptPages(Optional.empty()));

    private final KeptPages pages;
    /** What was asked for; absent for a rule without a page, and where none could be written, which is not tried again at every key. */
    private final Map<String, Optional<Path>> known = new ConcurrentHashMap<>();

    RuleLinks(KeptPages pages) {
        this.pages = pages;
    }

    /** The address of the page, a {@code file:} URI (RFC 8089). */
    Optional<String> to(String rule) {
        Optional<Path> page = known.computeIfAbsent(rule, this::written);
        if (page.filter(file -> !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)).isPresent()) {
            // somebody has emptied the folder meanwhile
            page = written(rule);
            known.put(rule, page);
        }
        return page.map(file -> file.toUri().toString());
    }

    private Optional<Path> written(String rule) {
        return RulePages.page(rule).flatMap(page -> pages.write(rule + ".html", RulePageHtml.of(page)));
    }
}
