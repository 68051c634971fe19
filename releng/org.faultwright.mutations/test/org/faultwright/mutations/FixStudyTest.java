/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;

/** No fix that is offered brings a finding, over the flawed bench and a sample of texts with one defect. */
class FixStudyTest {
    private static final Path DEMO = Path.of("../../procedures-demo");
    private static final Path FLAWED = Path.of("../../bundles/org.faultwright.analysis.tests/src/test/resources/flawed");
    /** One text in so many; releng/fixes.sh tries them all. */
    private static final int SAMPLE = 15;

    @Test
    void should_offer_no_fix_of_the_flawed_bench_after_which_more_is_found() throws IOException {
        FixStudy study = new FixStudy();

        FixStudy.below(FLAWED).forEach(study::study);

        assertEquals(List.of(), study.worse());
        assertTrue(study.offered() >= 50, study.offered() + " fixes are offered");
    }

    @Test
    void should_offer_no_fix_of_a_seeded_defect_after_which_more_is_found() throws IOException {
        FixStudy study = new FixStudy();
        List<SourceText> texts = FixStudy.seeded(MutationStudy.specimens(DEMO).subList(0, 2), 1).toList();

        for (int i = 0; i < texts.size(); i += SAMPLE) {
            study.study(texts.get(i));
        }

        assertEquals(List.of(), study.worse());
        assertTrue(study.offered() > 0, study.offered() + " fixes are offered");
    }
}
