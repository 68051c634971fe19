/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Limit;

/**
 * One of a step's results and where it leads.
 *
 * @param head   what is seen
 * @param target the step or exit it leads to; absent in a broken text
 * @param repeat a bound on how often this way may be taken
 * @param proves conditions that this result establishes, such as a charge proved absent
 */
public record Outcome(Head head, Optional<Name> target, Optional<Repeat> repeat, List<Setting> proves,
        boolean normal, SourceRange at) {
    public Outcome(Head head, Optional<Name> target, Optional<Repeat> repeat, List<Setting> proves, SourceRange at) {
        this(head, target, repeat, proves, false, at);
    }

    /** Whether it stands nowhere in the text: it follows from the conclusion that the procedure names for what a step does not say. */
    public boolean isUnderstood() {
        return at.length() == 0;
    }

    /** What is seen. */
    public sealed interface Head {
        /** What to call this outcome in examples, signatures and on cards; unique within its step. */
        String key();

        SourceRange at();
    }

    /** A plain word such as {@code faint}, {@code yes}, {@code below} or {@code doubtful}. */
    public record Word(Name word) implements Head {
        @Override
        public String key() {
            return word.text();
        }

        @Override
        public SourceRange at() {
            return word.at();
        }
    }

    /** A code of the indicator, such as {@code 3 blinks}. */
    public record Code(Name pattern) implements Head {
        @Override
        public String key() {
            return pattern.text();
        }

        @Override
        public SourceRange at() {
            return pattern.at();
        }
    }

    /** Whatever the other outcomes leave. */
    public record AnythingElse(SourceRange at) implements Head {
        @Override
        public String key() {
            return "anything else";
        }
    }

    /** A range of readings, with a label where the author gave one. */
    public record Band(Optional<Name> label, Written<Limit> limit) implements Head {
        @Override
        public String key() {
            return label.map(Name::text).orElseGet(() -> limit.value().spelling());
        }

        @Override
        public SourceRange at() {
            return limit.at();
        }
    }

    /** After this many times the way leads elsewhere. @param otherwise where */
    public record Repeat(int atMost, Name otherwise, SourceRange at) {
    }

    public String key() {
        return head.key();
    }

    /** The same under another word. */
    Outcome named(String word) {
        return new Outcome(new Word(new Name(word, head.at())), target, repeat, proves, normal, at);
    }
}
