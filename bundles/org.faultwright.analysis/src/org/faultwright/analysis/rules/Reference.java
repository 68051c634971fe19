/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.ThingKind;

/**
 * A name that refers to something declared elsewhere.
 *
 * @param known    whether there is such a thing
 * @param declared where it is declared; absent for functions and for what is unknown
 * @param among the names that would do
 */
public record Reference(Name name, Kind kind, boolean known, Optional<Name> declared, Supplier<List<String>> among) {
    /** What kinds of things are referred to. */
    public enum Kind {
        STEP(ThingKind.STEP), TARGET(ThingKind.STEP, "step or exit"), READING(ThingKind.STEP, "step with a reading"), CONDITION(ThingKind.CONDITION),
        SETUP(ThingKind.SET_UP), VALUE(ThingKind.VALUE), NOTE(ThingKind.NOTE), POINT(ThingKind.POINT), PART(ThingKind.PART), INDICATOR(ThingKind.INDICATOR),
        INSTRUMENT(ThingKind.INSTRUMENT), ROUTINE(ThingKind.ROUTINE), FAULT(ThingKind.FAULT), LIBRARY(ThingKind.LIBRARY), FUNCTION(ThingKind.FUNCTION);

        private final ThingKind thing;
        private final String word;

        Kind(ThingKind thing) {
            this(thing, thing.word());
        }

        Kind(ThingKind thing, String word) {
            this.thing = thing;
            this.word = word;
        }

        /** How such a thing is referred to. */
        static Kind to(ThingKind thing) {
            return Arrays.stream(values()).filter(kind -> kind.thing == thing).findFirst().orElseThrow();
        }

        /** What it refers to, as a rule; an arrow may also lead to an exit or a fault. */
        public ThingKind thing() {
            return thing;
        }

        /** What would do, in the middle of a sentence. */
        String word() {
            return word;
        }

        /** Whether such a block may declare what is referred to; any may where its first word cannot be read. */
        public boolean isDeclaredBy(ThingKind block) {
            if (block == ThingKind.WORDS) {
                return this != LIBRARY && this != FUNCTION;
            }
            return switch (this) {
                case STEP, READING, FAULT -> block == thing;
                case TARGET -> block == thing || block == ThingKind.FAULT;
                case VALUE -> block == ThingKind.CONDITION || block == ThingKind.LIBRARY_USED;
                case LIBRARY, FUNCTION -> false;
                default -> block == thing || block == ThingKind.LIBRARY_USED;
            };
        }
    }
}
