/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.rules.Reference;
import org.faultwright.analysis.rules.References;
import org.faultwright.procedure.DamagedBlock;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.ThingKind;

/**
 * Tells causes from what only follows from them. A cause is a declaration or step with words that cannot be read, or a name that
 * leads nowhere. What rests on one cannot be judged yet, so its findings wait.
 */
public final class RootCauses {
    private static final String UNREADABLE = "unreadable-text";
    private static final String WAITS = " What may only follow from this is checked then.";
    private static final String UNKNOWN = "unknown-name";

    /** Rules that look at all of a text, so that words of it that cannot be read mislead them. */
    private static final Set<String> OF_EVERYTHING = Set.of("unused-declaration", "changed-after-release", "missing-header");

    /** Of a block's own rules, those that do not look at what its names stand for. */
    private static final Set<Group> OF_ITSELF = Set.of(Group.NAMES, Group.QUANTITIES, Group.RECORD);

    /** The groups of rules that look beyond single blocks, by the kind of block that they rest on; of other kinds, all of them. */
    private static final Set<Group> BEYOND_BLOCKS = Set.of(Group.PATHS, Group.STATE, Group.SAFETY, Group.FAULTS, Group.EXAMPLES);

    /** @param unreadable whether words cannot be read in it, rather than a name leading nowhere */
    private record Cause(ThingKind kind, SourceRange at, boolean unreadable) {
    }

    private final Subject subject;
    private final List<DamagedBlock> damaged = new ArrayList<>();
    private final TreeMap<Integer, SourceRange> blocks = new TreeMap<>();
    private final TreeMap<Integer, ThingKind> kinds = new TreeMap<>();
    private final TreeMap<Integer, Cause> causes = new TreeMap<>();
    private final Set<Integer> leaning = new HashSet<>();
    private final Set<SourceRange> excused = new HashSet<>();
    private final Set<Group> resting = new HashSet<>();

    private RootCauses(Subject subject) {
        this.subject = subject;
        Document document = subject.document();
        document.problems().stream().map(ReadingProblem::block).flatMap(Optional::stream).forEach(damaged::add);
        References.of(subject).stream().filter(reference -> reference.kind() == Reference.Kind.LIBRARY && !reference.known())
                .forEach(library -> damaged.add(new DamagedBlock(ThingKind.LIBRARY_USED, ThingKind.LIBRARY_USED.keyword(), "", library.name().at(), true)));
        collect(document);
        damaged.stream().filter(block -> block.kind() != ThingKind.LIBRARY_USED).forEach(block -> cause(block.kind(), block.at(), true));
        for (Reference reference : References.of(subject)) {
            if (!isKnown(reference)) {
                blockAt(reference.name().at()).ifPresentOrElse(
                        at -> cause(kinds.get(at.offset()), at, false), () -> cause(ThingKind.WORDS, reference.name().at(), false));
            }
        }
        References.of(subject).stream().filter(reference -> !reference.known() && restsOnDamage(reference))
                .forEach(reference -> excused.add(reference.name().at()));
        References.of(subject).stream().filter(this::restsOnDamage).map(reference -> blockAt(reference.name().at()))
                .flatMap(Optional::stream).forEach(at -> leaning.add(at.offset()));
        causes.values().forEach(cause -> resting.addAll(restingOn(cause.kind())));
    }

    /** Parts what rules found into what stands and what waits. */
    public static Assessment part(Subject subject, List<Finding> found) {
        boolean sound = subject.document().problems().isEmpty()
                && References.of(subject).stream().allMatch(reference -> reference.known() || reference.name().text().isEmpty());
        return sound ? new Assessment(List.copyOf(found), List.of()) : new RootCauses(subject).part(found);
    }

    private Assessment part(List<Finding> found) {
        List<Finding> standing = new ArrayList<>();
        List<Finding> waiting = new ArrayList<>();
        found.forEach(finding -> (waits(finding) ? waiting : standing).add(finding));
        if (!waiting.isEmpty()) {
            standing.stream().filter(finding -> finding.rule().equals(UNKNOWN)).min(Comparator.comparing(finding -> !isLibrary(finding)))
                    .ifPresent(first -> standing.set(standing.indexOf(first), saying(first)));
        }
        return new Assessment(List.copyOf(standing), List.copyOf(waiting));
    }

    /** A library that is not there may declare any name, so that more waits for it than for a name. */
    private boolean isLibrary(Finding unknown) {
        return damaged.stream().anyMatch(block -> block.kind() == ThingKind.LIBRARY_USED && block.at().equals(unknown.at()));
    }

    private static Finding saying(Finding first) {
        return new Finding(first.rule(), first.severity(), first.at(), first.message(), first.advice() + WAITS, first.path(), first.fixes());
    }

    /**
     * Whether a name leads somewhere, be it to what cannot be read. A broken first line may be about to declare it.
     */
    private boolean isKnown(Reference reference) {
        return reference.known() || reference.name().text().isEmpty() || restsOnDamage(reference);
    }

    private boolean restsOnDamage(Reference reference) {
        return damaged.stream().anyMatch(block -> reference.kind().isDeclaredBy(block.kind())
                && (block.name().equals(reference.name().text()) || block.headBroken() && !reference.known()));
    }

    private void collect(Document document) {
        document.own().byKind().forEach(this::add);
        if (document instanceof Procedure procedure) {
            add(ThingKind.FAULT, procedure.faults());
            procedure.writtenSteps().forEach(step -> add(ThingKind.STEP, step.at()));
            procedure.examples().stream().map(Example::at).forEach(at -> add(ThingKind.EXAMPLE, at));
        }
    }

    private void add(ThingKind kind, List<? extends Declaration> declared) {
        declared.stream().map(Declaration::at).forEach(at -> add(kind, at));
    }

    private void add(ThingKind kind, SourceRange at) {
        blocks.put(at.offset(), at);
        kinds.put(at.offset(), kind);
    }

    private void cause(ThingKind kind, SourceRange at, boolean unreadable) {
        add(kind, at);
        causes.merge(at.offset(), new Cause(kind, at, unreadable), (one, other) -> one.unreadable() ? one : other);
    }

    private Optional<SourceRange> blockAt(SourceRange words) {
        if (words.source() != subject.document().source()) {
            return Optional.empty();
        }
        return Optional.ofNullable(blocks.floorEntry(words.offset())).map(Map.Entry::getValue)
                .filter(at -> words.offset() <= at.end());
    }

    private static Set<Group> restingOn(ThingKind kind) {
        return switch (kind) {
            case EXAMPLE -> Set.of(Group.EXAMPLES);
            case FAULT -> Set.of(Group.FAULTS, Group.EXAMPLES, Group.PATHS);
            case POINT, PART, INSTRUMENT, NOTE -> Set.of(Group.SAFETY, Group.STATE);
            case INDICATOR -> Set.of();
            case EQUIPMENT, REVISION, COMPLAINT, TOOL, DECISION, AMBIENT -> Set.of(Group.RECORD, Group.INSTRUMENTS);
            default -> BEYOND_BLOCKS;
        };
    }

    private boolean waits(Finding finding) {
        Optional<Group> group = RuleIndex.header(finding.rule()).map(RuleHeader::group);
        if (finding.rule().equals(UNREADABLE) || group.isEmpty()) {
            return false;
        }
        Optional<SourceRange> block = blockAt(finding.at());
        Optional<Cause> own = block.map(at -> causes.get(at.offset()));
        if (finding.rule().equals(UNKNOWN)) {
            return own.isPresent() && own.get().unreadable() || excused.contains(finding.at());
        }
        if (!damaged.isEmpty() && OF_EVERYTHING.contains(finding.rule()) || resting.contains(group.get())) {
            return true;
        }
        return own.isPresent() && (own.get().unreadable() || !OF_ITSELF.contains(group.get()))
                || block.isPresent() && leaning.contains(block.get().offset());
    }
}
