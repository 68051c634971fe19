/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The remarks in a text: they are their author's, and stay when what they stand in is taken out. */
public final class Remarks {
    private static final Pattern PART = Pattern.compile("(?<remark>//[^\\n]*|/\\*[\\s\\S]*?\\*/)|\"(?:\\\\.|[^\"\\\\])*\"");

    private Remarks() {
    }

    /** In the order written, without the blanks around them. Signs in quotation marks begin no remark. */
    public static List<String> in(String text) {
        List<String> remarks = new ArrayList<>();
        Matcher part = PART.matcher(text);
        while (part.find()) {
            if (part.group("remark") != null) {
                remarks.add(part.group("remark").strip());
            }
        }
        return remarks;
    }

    /** What stays of whole lines that are taken out: each remark on a line of its own. @param indent what stands before each */
    public static String keptFrom(String lines, String indent) {
        return in(lines).stream().map(remark -> indent + remark + "\n").collect(Collectors.joining());
    }

    /** The text with blanks in the place of remarks and of what stands in quotation marks, each sign of the language where it was. */
    public static String blanked(String text) {
        StringBuilder blanked = new StringBuilder(text);
        Matcher part = PART.matcher(text);
        while (part.find()) {
            boolean remark = part.group("remark") != null;
            for (int i = remark ? part.start() : part.start() + 1; i < (remark ? part.end() : part.end() - 1); i++) {
                if (text.charAt(i) != '\n' && text.charAt(i) != '\r') {
                    blanked.setCharAt(i, ' ');
                }
            }
        }
        return blanked.toString();
    }
}
