/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.reference;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One entry of the reference.
 *
 * @param title    its heading, usually the words that a declaration or line begins with
 * @param form     how it is written: small letters stand as they are, capitals are to be filled in
 * @param markdown the entry without its heading
 * @param examples the texts that show it
 */
public record ReferenceEntry(String title, String form, String markdown, List<String> examples) {
    private static final Pattern FORM = Pattern.compile("(?ms)^```syntax\\n(.*?)^```$");
    private static final Pattern EXAMPLE = Pattern.compile("(?ms)^```procedure\\n(.*?)^```$");
    private static final Pattern QUOTED = Pattern.compile("\"[^\"\n]*\"");
    private static final Pattern WORD = Pattern.compile("(?<![A-Za-z-])[a-z][A-Za-z]*(-[a-z]+)*|->|\\+/-|\\.\\.|[±%*/+-]");

    static ReferenceEntry read(String section) {
        int head = section.indexOf('\n');
        String body = section.substring(head).strip() + "\n";
        Matcher form = FORM.matcher(body);
        return new ReferenceEntry(section.substring(0, head).strip(), form.find() ? form.group(1) : "", body,
                EXAMPLE.matcher(body).results().map(example -> example.group(1)).toList());
    }

    /** The words and signs that its form has as they stand. */
    public Set<String> words() {
        Set<String> words = new TreeSet<>();
        Matcher word = WORD.matcher(QUOTED.matcher(form).replaceAll("\"\""));
        while (word.find()) {
            words.add(word.group());
        }
        return words;
    }

    boolean isHeadedBy(String word) {
        return title.equals(word) || title.startsWith(word + " ");
    }

    boolean isAbout(String word) {
        return !word.isBlank() && Pattern.compile("\\b" + Pattern.quote(word) + "s?\\b", Pattern.CASE_INSENSITIVE).matcher(title).find();
    }

    /** The entry as a page of its own. */
    public String page() {
        return "# " + title + "\n\n" + markdown;
    }
}
