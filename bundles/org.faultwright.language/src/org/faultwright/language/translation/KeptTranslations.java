/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.eclipse.emf.ecore.EObject;
import org.faultwright.procedure.Relocation;
import org.faultwright.procedure.SourceText;

/**
 * What the blocks of a text were translated into. A block that is parsed as it was means what it meant, and only stands elsewhere. Nothing is
 * kept of a block in whose translation something was found to say.
 */
public final class KeptTranslations {
    /** Of a text that is read for the first time. */
    public static final KeptTranslations NONE = new KeptTranslations();

    /** @param start where the block stood when it was translated */
    private record KeptBlock(Object translated, int start) {
    }

    private final Map<EObject, KeptBlock> kept = new IdentityHashMap<>();

    KeptTranslations() {
    }

    /** What one text is translated into, the blocks that were kept being taken from the text before it. */
    static final class Taking {
        private final SourceText source;
        private final Map<EObject, Integer> blocks;
        private final KeptTranslations before;
        private final KeptTranslations now = new KeptTranslations();
        private final ModelSource passage;

        /** @param blocks where each element that a block was parsed into begins */
        Taking(SourceText source, Map<EObject, Integer> blocks, KeptTranslations before, ModelSource passage) {
            this.source = source;
            this.blocks = blocks;
            this.before = before;
            this.passage = passage;
        }

        /** What an element was translated into, moved to where it stands now; else it is translated. */
        @SuppressWarnings("unchecked")
        <T> T of(EObject element, Supplier<T> translation) {
            Integer start = blocks.get(element);
            if (start == null) {
                return translation.get();
            }
            KeptBlock known = before.kept.get(element);
            int said = passage.said();
            T translated = known == null ? translation.get() : (T) new Relocation(source, start - known.start()).of(known.translated());
            if (said == passage.said()) {
                now.kept.put(element, new KeptBlock(translated, start));
            }
            return translated;
        }

        KeptTranslations now() {
            return now;
        }
    }
}
