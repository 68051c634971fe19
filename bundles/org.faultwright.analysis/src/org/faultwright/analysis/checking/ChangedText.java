/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.paths.SafetyNeeds;
import org.faultwright.analysis.paths.Understood;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SameMeaning;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;

/**
 * What is the same in a procedure after a change of its text. Its steps, faults and examples are compared from both ends; those in the middle
 * have changed. Where anything else has changed too, nothing is said to be the same.
 */
final class ChangedText {
    /** Beyond so many changed blocks it is as well to begin anew. */
    private static final int MOST = 200;

    /** A step, a fault or an example. */
    private record Block(Object part, SourceRange at) {
    }

    private final Procedure before;
    private final Procedure now;
    /** The characters that differ: from one offset to one in the text before and one in the text now. */
    private final int from;
    private final int toBefore;
    private final int toNow;

    private final List<Block> blocksBefore;
    private final List<Block> blocksNow;
    private int front;
    private int back;
    private int touchedFrom;
    private int touchedTo;

    private ChangedText(Procedure before, Procedure now) {
        this.before = before;
        this.now = now;
        String one = before.source().content();
        String other = now.source().content();
        int most = Math.min(one.length(), other.length());
        int same = 0;
        while (same < most && one.charAt(same) == other.charAt(same)) {
            same++;
        }
        int end = 0;
        while (end < most - same && one.charAt(one.length() - 1 - end) == other.charAt(other.length() - 1 - end)) {
            end++;
        }
        from = same;
        toBefore = one.length() - end;
        toNow = other.length() - end;
        blocksBefore = blocks(before);
        blocksNow = blocks(now);
    }

    /** Absent where too much has changed, so that everything is to be looked at again. */
    static Optional<ChangedText> between(Document before, Document now) {
        if (!(before instanceof Procedure one) || !(now instanceof Procedure other) || !one.source().name().equals(other.source().name())
                || !areSame(one.libraries(), other.libraries())) {
            return Optional.empty();
        }
        ChangedText change = new ChangedText(one, other);
        return change.isOfBlocks() ? Optional.of(change) : Optional.empty();
    }

    /** Read from the same texts; what a library says once is put in anew at each reading. */
    private static boolean areSame(List<Library> before, List<Library> now) {
        boolean same = before.size() == now.size();
        for (int i = 0; same && i < now.size(); i++) {
            Library one = before.get(i);
            Library other = now.get(i);
            same = one == other || one.source() == other.source() && areSame(one.libraries(), other.libraries());
        }
        return same;
    }

    private static List<Block> blocks(Procedure procedure) {
        List<Block> blocks = new ArrayList<>(procedure.steps().size() + procedure.faults().size() + procedure.examples().size());
        for (Fault fault : procedure.faults()) {
            blocks.add(new Block(fault, fault.at()));
        }
        for (Step step : procedure.steps()) {
            if (!step.isUnderstood()) {
                blocks.add(new Block(step, step.at()));
            }
        }
        for (Example example : procedure.examples()) {
            blocks.add(new Block(example, example.at()));
        }
        blocks.sort(Comparator.comparingInt(block -> block.at().offset()));
        return blocks;
    }

    private boolean isOfBlocks() {
        int most = Math.min(blocksBefore.size(), blocksNow.size());
        while (front < most && isSame(blocksBefore.get(front), blocksNow.get(front))) {
            front++;
        }
        while (back < most - front && isSame(blocksBefore.get(blocksBefore.size() - 1 - back), blocksNow.get(blocksNow.size() - 1 - back))) {
            back++;
        }
        touch();
        return blocksBefore.size() - front - back <= MOST && blocksNow.size() - front - back <= MOST && isRestSame() && isSameMeantElsewhere() && areConclusionsOfFaultsSame() && areExamplesSame()
                && (Stream.concat(before.steps().stream(), now.steps().stream()).noneMatch(ClosingStep::is) || areClosingStepsSame());
    }

    /** What stands before and behind the changed blocks up to their neighbours, be it blanks or remarks, is told of with them. */
    private void touch() {
        String text = before.source().content();
        boolean any = front < blocksBefore.size() - back;
        touchedFrom = any ? Math.min(from, blocksBefore.get(front).at().offset()) : from;
        touchedTo = any ? Math.max(toBefore, blocksBefore.get(blocksBefore.size() - 1 - back).at().end()) : toBefore;
        // a fix may be laid out by what stands before it in its line, and by blanks and remarks around it
        touchedFrom = lineStart(text, touchedFrom);
        while (touchedFrom > 0 && isBlankOrRemark(text.substring(lineStart(text, touchedFrom - 1), touchedFrom))) {
            touchedFrom = lineStart(text, touchedFrom - 1);
        }
        touchedTo = lineEnd(text, touchedTo);
        while (touchedTo < text.length() && isBlankOrRemark(text.substring(touchedTo, lineEnd(text, touchedTo + 1)))) {
            touchedTo = lineEnd(text, touchedTo + 1);
        }
        if (front > 0) {
            touchedFrom = Math.min(touchedFrom, blocksBefore.get(front - 1).at().end());
        }
        if (back > 0) {
            touchedTo = Math.max(touchedTo, blocksBefore.get(blocksBefore.size() - back).at().offset());
        }
    }

    private static int lineStart(String text, int at) {
        return text.lastIndexOf('\n', at - 1) + 1;
    }

    private static int lineEnd(String text, int from) {
        int end = text.indexOf('\n', from);
        return end < 0 ? text.length() : end;
    }

    private static boolean isBlankOrRemark(String line) {
        return line.isBlank() || line.strip().startsWith("//");
    }

    /** Blocks with the same words mean the same, but for a step that runs on to another one below. */
    private boolean isSame(Block one, Block other) {
        return one.part().getClass() == other.part().getClass() && isMoved(one.at(), other.at()) && unsaid(one.part()).equals(unsaid(other.part()));
    }

    private static List<String> unsaid(Object part) {
        List<String> unsaid = List.of();
        for (Outcome outcome : part instanceof Step step ? step.outcomes() : List.<Outcome>of()) {
            if (outcome.isUnderstood() && outcome.target().isPresent()) {
                unsaid = unsaid.isEmpty() ? new ArrayList<>() : unsaid;
                unsaid.add(outcome.target().get().text());
            }
        }
        return unsaid;
    }

    /** Whether a place is the same place after the change, and no character in it or beside it has changed. */
    private boolean isMoved(SourceRange one, SourceRange other) {
        if (one.source() != before.source() || other.source() != now.source()) {
            return one.equals(other);
        }
        return one.length() == other.length()
                && (one.end() < from && other.offset() == one.offset()
                        || one.offset() > toBefore && other.offset() == one.offset() + toNow - toBefore);
    }

    /** What stands around steps, faults and examples. */
    private boolean isRestSame() {
        return Stream.of(new Object[] {before.name(), now.name()}, new Object[] {before.title(), now.title()},
                new Object[] {before.uses(), now.uses()}, new Object[] {before.equipment(), now.equipment()},
                new Object[] {before.revision(), now.revision()}, new Object[] {before.complaints(), now.complaints()},
                new Object[] {before.tools(), now.tools()}, new Object[] {before.own(), now.own()},
                new Object[] {before.statedRule(), now.statedRule()}, new Object[] {before.closesBy(), now.closesBy()}, new Object[] {before.elsewhere(), now.elsewhere()},
                new Object[] {before.begin(), now.begin()})
                .allMatch(pair -> SameMeaning.with(this::isMoved, pair[0], pair[1]));
    }

    /** A conclusion that is meant without being named turns the arrows of all steps. */
    private boolean isSameMeantElsewhere() {
        return before.elsewhere().map(name -> Understood.refers(before, name)).equals(now.elsewhere().map(name -> Understood.refers(now, name)));
    }

    /** An arrow to a fault and the fault itself make a conclusion that stands in neither. */
    private boolean areConclusionsOfFaultsSame() {
        return SameMeaning.wordsAside(ofFaults(before), ofFaults(now));
    }

    private static List<Step> ofFaults(Procedure procedure) {
        return procedure.steps().stream().filter(step -> step.isUnderstood() && !ClosingStep.is(step)).toList();
    }

    /** What an example does not say itself it has from faults, steps and other examples: its words alone do not tell what it means. */
    private boolean areExamplesSame() {
        for (int i = 0; i < front; i++) {
            if (blocksNow.get(i).part() instanceof Example now && !SameMeaning.with(this::isMoved, blocksBefore.get(i).part(), now)) {
                return false;
            }
        }
        for (int i = 1; i <= back; i++) {
            if (blocksNow.get(blocksNow.size() - i).part() instanceof Example now
                    && !SameMeaning.with(this::isMoved, blocksBefore.get(blocksBefore.size() - i).part(), now)) {
                return false;
            }
        }
        return true;
    }

    /** Steps that close the unit turn arrows of steps whose words are as they were; then every step has to be compared. */
    private boolean areClosingStepsSame() {
        boolean same = isOf(this::limitsAside) && before.steps().size() == now.steps().size();
        for (int i = 0; same && i < now.steps().size(); i++) {
            same = limitsAside(before.steps().get(i), now.steps().get(i));
        }
        return same;
    }

    /** Whether a rule that looks so far finds the same, but for where it stands. Of one block it is to be asked. */
    boolean isBeyond(Reach reach) {
        return switch (reach) {
            case MEANING -> isOf(this::wordsAside);
            case PATHS -> isOf(this::limitsAside) && isOf(this::decideAlike);
            case NAMES -> isOf(this::limitsAsWritten) && isOf(this::decideAlike);
            // what is computed depends on which readings lead to it
            case READINGS -> isOf(SameMeaning::targetsAside) && (isBeyond(Reach.MEANING) || !computes());
            case ONE_BLOCK, EVERYTHING -> false;
        };
    }

    private boolean wordsAside(Object one, Object other) {
        return SameMeaning.wordsAside(one, other, this::leadNowhere);
    }

    private boolean limitsAside(Object one, Object other) {
        return SameMeaning.limitsAside(one, other, this::leadNowhere);
    }

    private boolean limitsAsWritten(Object one, Object other) {
        return SameMeaning.limitsAside(one, other, SameMeaning.Targets.AS_WRITTEN);
    }

    /** A name that stands nowhere else leads nowhere, as most names do while they are typed; whatever it is, no path goes on there. */
    private boolean leadNowhere(Name one, Name other) {
        return standsAlone(one, before.source()) && standsAlone(other, now.source());
    }

    private static boolean standsAlone(Name name, SourceText source) {
        String text = source.content();
        return name.at().source() == source && !name.isUnderstood() && !name.text().isEmpty()
                && next(text, name.text(), 0) == name.at().offset() && next(text, name.text(), name.at().end()) < 0;
    }

    /** Where these letters stand as a whole word. */
    private static int next(String text, String word, int from) {
        int at = text.indexOf(word, from);
        while (at >= 0 && (isOfWord(text, at - 1) || isOfWord(text, at + word.length()))) {
            at = text.indexOf(word, at + 1);
        }
        return at;
    }

    private static boolean isOfWord(String text, int at) {
        return at >= 0 && at < text.length() && Character.isJavaIdentifierPart(text.charAt(at));
    }

    /** Whether each changed block is the same as before in that respect. */
    private boolean isOf(BiPredicate<Object, Object> same) {
        boolean all = blocksBefore.size() == blocksNow.size();
        for (int i = front; all && i < blocksNow.size() - back; i++) {
            all = same.test(blocksBefore.get(i).part(), blocksNow.get(i).part());
        }
        return all;
    }

    /** Whether nothing beyond a step depends on what differs in its limits. */
    private boolean decideAlike(Object one, Object other) {
        return wordsAside(one, other)
                || one instanceof Step.Measure was && other instanceof Step.Measure is && isPlain(was) && isPlain(is) && !computes() && !isReadingTold(is.name());
    }

    /** A reading that proves nothing, tests no protection and is no danger by itself. */
    private static boolean isPlain(Step.Measure step) {
        return step.outcomes().stream().allMatch(outcome -> outcome.proves().isEmpty()) && step.frame().precautions().tests().isEmpty()
                && SafetyNeeds.isHarmless(step);
    }

    /** Whether nothing but examples and remarks differ, and every word can be read. */
    boolean isOfExamples() {
        return before.problems().isEmpty() && now.problems().isEmpty() && Stream.concat(blocksBefore.subList(front, blocksBefore.size() - back).stream(),
                blocksNow.subList(front, blocksNow.size() - back).stream()).allMatch(block -> block.part() instanceof Example);
    }

    private boolean computes() {
        return Stream.concat(before.steps().stream(), now.steps().stream()).anyMatch(Step.Calculate.class::isInstance);
    }

    /** Whether the fault table or an example tells what is read at a step, so that its limits decide the result. */
    private boolean isReadingTold(Name step) {
        return Stream.of(before, now).flatMap(procedure -> Stream.concat(procedure.faults().stream().map(Fault::shows), procedure.examples().stream().map(Example::shows)))
                .flatMap(List::stream).anyMatch(showing -> showing.step().text().equals(step.text())
                        && showing.possible().stream().anyMatch(possible -> possible.reading().isPresent()));
    }

    /** The procedure with nothing but the blocks that have changed and their neighbours; what is declared is in the scope of the whole one. */
    Procedure changedBlocks() {
        List<Block> changed = withNeighbours(blocksNow);
        Declarations none = Declarations.NONE;
        Declarations own = new Declarations(none.conditions(), none.setUps(), none.instruments(), none.points(), none.parts(), none.indicators(),
                none.notes(), none.routines(), now.own().ambient());
        return now.with(now.libraries(), own).with(parts(changed, Fault.class), now.begin(), parts(changed, Step.class), parts(changed, Example.class));
    }

    private static <T> List<T> parts(List<Block> blocks, Class<T> kind) {
        return blocks.stream().map(Block::part).filter(kind::isInstance).map(kind::cast).toList();
    }

    /** Whether a place in the text now belongs to the blocks that have changed or to a neighbour of theirs. */
    boolean isAmongChanged(SourceRange at) {
        return at.source() == now.source() && isAmong(at, blocksNow);
    }

    /** Whether a place in the text before belonged to them. */
    boolean wasAmongChanged(SourceRange at) {
        return at.source() == before.source() && isAmong(at, blocksBefore);
    }

    private boolean isAmong(SourceRange at, List<Block> blocks) {
        return withNeighbours(blocks).stream().anyMatch(block -> block.at().offset() <= at.offset() && at.offset() <= block.at().end());
    }

    private List<Block> withNeighbours(List<Block> blocks) {
        return blocks.subList(Math.max(0, front - 1), Math.min(blocks.size(), blocks.size() - back + 1));
    }

    /** A finding of the text before as it is now; absent where the change touches any place that it names. */
    Optional<Finding> moved(Finding finding) {
        List<PathStep> path = new ArrayList<>(finding.path().size());
        for (PathStep step : finding.path()) {
            if (isTouched(step.at())) {
                return Optional.empty();
            }
            path.add(new PathStep(step.step(), step.outcome(), moved(step.at())));
        }
        List<Fix> fixes = new ArrayList<>(finding.fixes().size());
        for (Fix fix : finding.fixes()) {
            if (fix.edits().stream().anyMatch(edit -> isTouched(edit.at()))) {
                return Optional.empty();
            }
            fixes.add(new Fix(fix.title(), fix.edits().stream().map(edit -> new Fix.Edit(moved(edit.at()), edit.replacement())).toList()));
        }
        return isTouched(finding.at()) ? Optional.empty() : Optional.of(new Finding(finding.rule(), finding.severity(), moved(finding.at()),
                finding.message(), finding.advice(), List.copyOf(path), List.copyOf(fixes)));
    }

    /** Whether a place lies in the blocks that have changed or in what stands between them and their neighbours. */
    private boolean isTouched(SourceRange at) {
        return at.source() == before.source() && at.end() >= touchedFrom && at.offset() <= touchedTo;
    }

    private SourceRange moved(SourceRange at) {
        SourceText source = now.source();
        if (at.source() != before.source()) {
            return at;
        }
        return new SourceRange(source, at.offset() < from ? at.offset() : at.offset() + toNow - toBefore, at.length());
    }
}
