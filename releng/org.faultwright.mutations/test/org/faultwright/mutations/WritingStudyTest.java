/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;

/** What is offered can be written: a sample of the procedures that releng/writing.sh studies. */
class WritingStudyTest {
    private static final Path DEMO = Path.of("../../procedures-demo");
    private static final int PROCEDURES = 40;

    @Test
    void should_write_nothing_that_brings_a_finding_or_loses_a_word() throws IOException {
        StudyTexts texts = new StudyTexts(MutationStudy.specimens(DEMO).subList(2, 3));
        WritingStudy study = new WritingStudy();
        List<WritingStudy.Disagreement> found = new ArrayList<>();

        for (int number = 0; number < PROCEDURES; number++) {
            // few of the demo, each of which takes as long as all of the others
            if (number % 4 != 1 || number % 20 == 1) {
                found.addAll(study.study(texts.text(number), number % 8 == 0));
            }
        }

        assertEquals(List.of(), found.stream().map(one -> one.about() + ": " + one.what() + "\n" + one.text().content()).toList());
        assertTrue(study.counts().of("fixes offered and applied") > 100, study.counts().all().toString());
        assertTrue(study.counts().of("drafts written") > 5, study.counts().all().toString());
        assertTrue(study.counts().of("orders studied") > 2, study.counts().all().toString());
    }

    @Test
    void should_make_the_same_texts_each_time() throws IOException {
        List<Specimen> demo = MutationStudy.specimens(DEMO).subList(0, 1);

        for (int number = 0; number < 4; number++) {
            assertEquals(new StudyTexts(demo).text(number).content(), new StudyTexts(demo).text(number).content());
        }
    }

    private static Fix fix(String text, int... fromAndLength) {
        SourceText source = new SourceText("A.procedure", text);
        List<Fix.Edit> edits = new ArrayList<>();
        for (int i = 0; i < fromAndLength.length; i += 2) {
            edits.add(new Fix.Edit(new SourceRange(source, fromAndLength[i], fromAndLength[i + 1]), "new"));
        }
        return new Fix("Change it", edits);
    }

    @Test
    void should_see_changes_that_overlap() {
        assertEquals(Optional.empty(), WrittenText.unsound(fix("one two three", 0, 3, 4, 3), "one two three"));
        assertEquals(Optional.of("two changes at one place"), WrittenText.unsound(fix("one two three", 0, 5, 4, 3), "one two three"));
        assertEquals(Optional.of("two changes at one place"), WrittenText.unsound(fix("one two three", 4, 0, 4, 0), "one two three"));
    }

    @Test
    void should_see_what_a_text_has_lost() {
        WrittenText before = WrittenText.of("// why\ncheck A \"Does it // run?\" { /* how */ }\n");

        assertEquals(Optional.empty(), before.lostAny(WrittenText.of("/* how */ // why\ncheck A \"Does it // run?\" {\n}")));
        assertEquals(Optional.of("the remark /* how */"), before.lost(WrittenText.of("// why\ncheck A \"\" { }"), ""));
        assertEquals(Optional.of("the name A"), before.lost(WrittenText.of("// why\n/* how */"), "Rename it"));
        assertEquals(Optional.empty(), before.lost(WrittenText.of("// why\n/* how */"), "Remove A"));
        assertEquals(Optional.of("the words \"Does it // run?\""), before.lostAny(WrittenText.of("// why\ncheck A \"\" { /* how */ }")));
    }
}
