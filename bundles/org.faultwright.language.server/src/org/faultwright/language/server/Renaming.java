/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.ThingKind;

/** Gives something declared in a text another name, at every place of that text that names it. */
public final class Renaming {
    private static final Pattern NAME = Pattern.compile("[\\p{IsLatin}\\p{IsGreek}_][\\p{IsLatin}\\p{IsGreek}0-9_]*");
    private static final Set<ThingKind> SHARED = EnumSet.of(ThingKind.VALUE, ThingKind.STEP, ThingKind.EXIT);
    /** What an arrow may lead to beside an exit. */
    private static final Set<ThingKind> TARGETS = EnumSet.of(ThingKind.STEP, ThingKind.FAULT);

    private Renaming() {
    }

    /** Why the name at this offset cannot be given that other name; absent when it can. */
    public static Optional<String> refusal(OpenText text, int offset, String newName) {
        Optional<NameInText> name = text.nameAt(offset);
        if (name.isEmpty()) {
            return Optional.of("There is no name at the cursor; put it on a step, a note or another thing with a name.");
        }
        if (name.get().declared().isEmpty()) {
            return Optional.of(name.get().name() + " is not declared anywhere, so there is nothing to rename.");
        }
        if (!name.get().declared().get().at().source().name().equals(text.source().name())) {
            return Optional.of(name.get().name() + " is declared in " + name.get().declared().get().at().source().name()
                    + "; rename it there.");
        }
        return unfit(newName).or(() -> taken(text, name.get(), newName));
    }

    /** Why these words cannot be a name at all; absent when they can. */
    public static Optional<String> unfit(String newName) {
        return NAME.matcher(newName).matches() && !Keywords.ALL.contains(newName) ? Optional.empty()
                : Optional.of("\"" + newName + "\" cannot be a name. Use letters, digits and _, and no word of the language.");
    }

    /** Why a thing cannot have that other name in this text: another of its kind has it. Values, steps and exits may share names. */
    public static Optional<String> taken(OpenText text, NameInText name, String newName) {
        boolean own = name.name().text().equals(newName);
        boolean shared = SHARED.contains(name.kind());
        // an arrow leads to a fault only where no step has its name
        ThingKind rival = name.kind() == ThingKind.FAULT ? ThingKind.STEP : ThingKind.FAULT;
        if (!own && TARGETS.contains(name.kind()) && NamesInText.of(text).declares(newName, rival)) {
            return Optional.of("There is a " + rival.word() + " \"" + newName + "\" already: an arrow to that name could mean either.");
        }
        return !own && !shared && NamesInText.of(text).declares(newName, name.kind())
                ? Optional.of("There is a " + name.kind().word() + " \"" + newName + "\" already.") : Optional.empty();
    }

    /** The change of one text that a new name for something declared in it, or in a library, asks for; empty where it is not named. */
    public static List<Fix.Edit> edits(OpenText text, Name declared, String newName) {
        Stream<Fix.Edit> named = NamesInText.of(text).usesOf(declared).stream().map(at -> new Fix.Edit(at, at.length() == 0 ? " by " + newName : newName));
        return Stream.concat(named, namesakes(text, declared)).toList();
    }

    /** A step that follows a routine for having its name says which one when it gets another. */
    private static Stream<Fix.Edit> namesakes(OpenText text, Name declared) {
        return text.document().graphs().stream().flatMap(graph -> graph.writtenSteps().stream()).filter(step -> step.name().equals(declared))
                .filter(Step.Perform.class::isInstance).flatMap(step -> ((Step.Perform) step).namesake().stream())
                .map(routine -> new Fix.Edit(routine.at(), " by " + routine.text()));
    }

    /** The change of the text. @throws IllegalArgumentException if {@link #refusal} gives a reason */
    public static Fix rename(OpenText text, int offset, String newName) {
        Optional<String> refused = refusal(text, offset, newName);
        if (refused.isPresent()) {
            throw new IllegalArgumentException(refused.get());
        }
        return new Fix("Rename to " + newName, edits(text, text.nameAt(offset).orElseThrow().declared().orElseThrow(), newName));
    }
}
