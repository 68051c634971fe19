/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.NearNames;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;

/** The list of rules for help, preferences and the command line; made from the rule set alone. */
public final class RuleIndex {
    /** Found once, since it is asked of every finding at every key. */
    private static final class Known {
        static final Map<String, RuleHeader> BY_ID = headers().stream().collect(Collectors.toUnmodifiableMap(RuleHeader::id, header -> header));
    }

    private RuleIndex() {
    }

    /** Every rule in short, in the order of the rule set. */
    public static List<RuleHeader> headers() {
        return RuleSet.all().stream().map(Rule::header).toList();
    }

    /** The rule in short; absent when no rule has that id. */
    public static Optional<RuleHeader> header(String id) {
        return Optional.ofNullable(Known.BY_ID.get(id));
    }

    /** The rules under each heading; headings without a rule are left out. */
    public static Map<RuleHeader.Group, List<RuleHeader>> byGroup() {
        return headers().stream().collect(Collectors.groupingBy(RuleHeader::group,
                () -> new EnumMap<>(RuleHeader.Group.class), Collectors.toList()));
    }

    /** Ids near one that no rule has, nearest first. */
    public static List<String> near(String id) {
        return NearNames.of(id, headers().stream().map(RuleHeader::id).toList());
    }
}
