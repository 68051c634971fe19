/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import java.util.Comparator;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.faultwright.language.server.NameInText;
import org.faultwright.language.server.OpenText;
import org.faultwright.language.server.SearchScope;
import org.faultwright.language.server.WantedWords;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.ShelfText;

/**
 * What is looked for over the folders: words among things of a kind, or every place that names something.
 *
 * @param uses  the thing whose uses are looked for, where it is declared; absent where words are
 * @param named finds the texts that say its name at all
 */
record SearchQuery(WantedWords words, SearchScope among, Optional<Name> uses, Pattern named) {
    static SearchQuery forWords(String typed, SearchScope among) {
        return new SearchQuery(WantedWords.of(typed), among, Optional.empty(), Pattern.compile(""));
    }

    static SearchQuery forUses(Name declared) {
        return new SearchQuery(WantedWords.exactly(declared.text()), SearchScope.EVERYTHING, Optional.of(declared),
                Pattern.compile("(?U)\\b" + Pattern.quote(declared.text()) + "\\b"));
    }

    /** The same with the thing where it stands by now: the text that declares it may have been changed above it. */
    SearchQuery now() {
        return uses.flatMap(declared -> Editors.file(declared.at().source().name()).flatMap(file -> ShelfText.of(file).source())
                .filter(source -> !source.content().equals(declared.at().source().content())).flatMap(source -> again(declared, source)))
                .map(SearchQuery::forUses).orElse(this);
    }

    private Optional<Name> again(Name declared, SourceText source) {
        OpenText text = LiveTexts.get().services().unchecked(source);
        return named.matcher(source.content()).results().map(MatchResult::start)
                .flatMap(at -> text.nameAt(at).flatMap(NameInText::declared)
                        .filter(name -> name.at().offset() == at && name.at().source().name().equals(source.name())).stream())
                .min(Comparator.comparingInt(name -> Math.abs(name.at().offset() - declared.at().offset())));
    }

    /** Whether there is nothing to look for yet. */
    boolean isNothing() {
        return words.isEmpty() && among == SearchScope.EVERYTHING;
    }

    /** What was looked for, in a sentence. */
    String inWords() {
        if (uses.isPresent()) {
            return "the name \"" + uses.get().text() + "\"";
        }
        String asked = words.isEmpty() ? "" : "\"" + words + "\"";
        return among == SearchScope.EVERYTHING ? asked : asked.isEmpty() ? among.inSentence() : asked + " among " + among.inSentence();
    }
}
