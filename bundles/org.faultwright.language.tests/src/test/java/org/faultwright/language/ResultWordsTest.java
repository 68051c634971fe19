/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.xtext.GrammarUtil;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.language.services.ProcedureGrammarAccess;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;

/** What is written as an outcome or a code can be read again, also where it is a word of the language. */
class ResultWordsTest {
    @Test
    void should_write_words_of_the_language_so_that_they_are_read_as_outcomes() {
        ProcedureReader reader = new ProcedureReader((library, from) -> Optional.empty());
        Set<String> unread = new TreeSet<>();
        int tried = 0;
        for (String word : GrammarUtil.getAllKeywords(new ProcedureStandaloneSetup().createInjectorAndDoEMFRegistration()
                .getInstance(ProcedureGrammarAccess.class).getGrammar())) {
            if (!word.matches("[a-z]+")) {
                continue;
            }
            for (String key : List.of(word, "3 " + word)) {
                tried++;
                String text = "procedure P \"p\"\nindicator I \"i\" {\n" + ResultWords.written(key) + " means \"m\"\n}\n"
                        + "observe S \"s\" at I {\n" + ResultWords.written(key) + " -> E\n}\n";
                if (!reader.read(new SourceText("P.procedure", text)).problems().isEmpty()) {
                    unread.add(key);
                }
            }
        }
        assertTrue(tried > 200, tried + " tried");
        assertEquals(Set.of(), unread, "these are written without quotation marks and cannot be read so: add each word to TAKEN in "
                + "bundles/org.faultwright.analysis/src/org/faultwright/analysis/faults/ResultWords.java");
    }
}
