/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.FixTrial;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceText;

/**
 * A draft of the steps that a full check finds no error in. What the first draft lacks is put right and tried again: a step at which
 * hands or meter would meet voltage or charge is come to from the safe state, a note is read where it is needed. Where an error is left, no
 * draft is written, and the errors are told. An error that the text has already, such as a missing unit, is the author's and stays.
 */
public final class TriedDraft {
    /** What a tree of steps answers for; an error of another kind that the text had before is the author's. */
    private static final Set<Optional<Group>> TREE = Set.of(Optional.of(Group.PATHS), Optional.of(Group.STATE), Optional.of(Group.SAFETY),
            Optional.of(Group.FAULTS), Optional.of(Group.EXAMPLES));
    private static final int MOST_ROUNDS = 12;
    private static final int MOST_TOLD = 12;
    /** What is put right by coming to the step with the supply off. */
    private static final Set<String> LIVE = Set.of("live-work", "live-measurement");
    /** What is put right by proving the charge absent before. */
    private static final Set<String> CHARGED = Set.of("charge-not-proved-absent");
    /** What the fix of the finding itself puts right. */
    private static final Set<String> MENDED = Set.of("note-after-need", "note-never-read", "erase-without-backup-check");

    /**
     * @param text    the whole text with the draft in it; absent where none can be made
     * @param remarks what the author should know of it, or why there is none, each a sentence
     */
    public record Draft(Optional<String> text, List<String> remarks) {
    }

    private final Procedure procedure;
    private final Function<SourceText, Document> reader;
    private final Checker checker;
    private final Map<String, List<Setting>> safe = new LinkedHashMap<>();
    private final Set<String> own;

    private TriedDraft(Procedure procedure, Function<SourceText, Document> reader, Checker checker) {
        this.procedure = procedure;
        this.reader = reader;
        this.checker = checker;
        this.own = checker.check(procedure).stream().filter(finding -> !TREE.contains(group(finding))).map(TriedDraft::key)
                .collect(Collectors.toSet());
    }

    /**
     * @param reader  reads a changed text with the libraries of the procedure
     * @param checker with every rule
     */
    public static Draft of(Procedure procedure, Function<SourceText, Document> reader, Checker checker) {
        return DraftTree.obstacle(procedure).or(() -> isWhole(procedure, checker)).map(because -> new Draft(Optional.empty(), List.of(because)))
                .orElseGet(() -> new TriedDraft(procedure, reader, checker).draft());
    }

    /** A tree that leads every fault to its conclusion, without an error, is no draft's to change. */
    private static Optional<String> isWhole(Procedure procedure, Checker checker) {
        boolean whole = procedure.first().isPresent() && FaultWalks.of(procedure).all().stream().allMatch(FaultWalk::reachesFinding)
                && checker.check(procedure).stream().noneMatch(finding -> finding.severity() == Severity.ERROR && TREE.contains(group(finding)));
        return whole ? Optional.of("The steps are all there, and every fault comes to its conclusion. \"faultwright order\", and \"Better order\" in the window, look for a"
                + " better order of them; to have them drafted anew, take them out, or their outcomes.") : Optional.empty();
    }

    private static Optional<Group> group(Finding finding) {
        return RuleSet.all().stream().map(Rule::header).filter(header -> header.id().equals(finding.rule())).map(RuleHeader::group).findFirst();
    }

    private static String key(Finding finding) {
        return finding.rule() + " " + finding.message();
    }

    private Draft draft() {
        List<Finding> fewest = List.of();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            DraftTree.Built built = DraftTree.of(procedure, safe);
            String text = built.text();
            List<Finding> errors = errors(text);
            fewest = round == 0 || errors.size() < fewest.size() ? errors : fewest;
            if (!errors.isEmpty() && strengthened(errors, built)) {
                continue;
            }
            for (Optional<String> next = mended(text, errors); !errors.isEmpty() && next.isPresent(); next = mended(text, errors)) {
                text = next.get();
                errors = errors(text);
            }
            if (errors.isEmpty()) {
                return new Draft(Optional.of(text), remarks(text, built));
            }
            fewest = errors.size() < fewest.size() ? errors : fewest;
            break;
        }
        List<String> remarks = new ArrayList<>(List.of("No draft is written, because a full check finds errors in it:"));
        List<String> told = fewest.stream().map(finding -> finding.rule() + ": " + finding.message()).distinct().toList();
        told.stream().limit(MOST_TOLD).forEach(remarks::add);
        if (told.size() > MOST_TOLD) {
            remarks.add("and " + (told.size() - MOST_TOLD) + " more.");
        }
        return new Draft(Optional.empty(), List.copyOf(remarks));
    }

    private List<String> remarks(String text, DraftTree.Built built) {
        List<String> remarks = new ArrayList<>(built.remarks());
        List<String> left = checker.check(read(text)).stream().filter(this::isOwnError).map(Finding::rule).distinct().toList();
        if (!left.isEmpty()) {
            remarks.add("The text had errors before, and has them still: " + String.join(", ", left) + ".");
        }
        return List.copyOf(remarks);
    }

    private boolean isOwnError(Finding finding) {
        return finding.severity() == Severity.ERROR && finding.at().source().name().equals(procedure.source().name());
    }

    /** Errors that the draft brings; those of the text as it was, and of its libraries, are not its own. */
    private List<Finding> errors(String text) {
        return checker.check(read(text)).stream().filter(finding -> isOwnError(finding) && !own.contains(key(finding))).toList();
    }

    private Document read(String text) {
        return reader.apply(new SourceText(procedure.source().name(), text));
    }

    /** Lets steps be come to from the safe state. @return whether anything was added */
    private boolean strengthened(List<Finding> errors, DraftTree.Built built) {
        boolean more = false;
        for (Finding error : errors) {
            String step = stepOf(error, built).orElse("");
            for (Setting setting : wanted(error, step)) {
                List<Setting> known = safe.computeIfAbsent(step, s -> new ArrayList<>());
                if (known.stream().noneMatch(one -> one.condition().text().equals(setting.condition().text()))) {
                    known.add(setting);
                    more = true;
                }
            }
        }
        return more;
    }

    private List<Setting> wanted(Finding error, String step) {
        if (CHARGED.contains(error.rule())) {
            return safeValues(Condition::charged);
        }
        if (!LIVE.contains(error.rule())) {
            return List.of();
        }
        List<Setting> dead = safeValues(Condition::live);
        boolean worksLive = procedure.writtenSteps().stream().filter(one -> one.name().text().equals(step))
                .flatMap(one -> one.frame().needs().stream()).anyMatch(need -> dead.stream().anyMatch(off ->
                        off.condition().text().equals(need.condition().text()) && !off.value().text().equals(need.value().text())));
        // what is done under power is done with everything closed
        return worksLive ? procedure.scope().conditions().stream().filter(condition -> condition.live().isEmpty() && condition.charged().isEmpty())
                .flatMap(condition -> condition.ends().stream().map(end -> new Setting(condition.name(), end, condition.name().at()))).toList() : dead;
    }

    /** The value of each such condition in which nothing is live or charged: the one that it starts or ends with, where that is one. */
    private List<Setting> safeValues(Function<Condition, List<Name>> dangerous) {
        return procedure.scope().conditions().stream().filter(condition -> !dangerous.apply(condition).isEmpty())
                .flatMap(condition -> {
                    Set<String> danger = dangerous.apply(condition).stream().map(Name::text).collect(Collectors.toSet());
                    List<Name> order = new ArrayList<>();
                    condition.ends().ifPresent(order::add);
                    condition.starts().ifPresent(order::add);
                    order.addAll(condition.values());
                    return order.stream().filter(value -> !danger.contains(value.text())).findFirst()
                            .map(value -> new Setting(condition.name(), value, condition.name().at())).stream();
                }).toList();
    }

    /** The step of the procedure that the finding is about: that of its path, or the one that stands there. */
    private Optional<String> stepOf(Finding finding, DraftTree.Built built) {
        List<PathStep> path = finding.path();
        Optional<String> last = path.isEmpty() ? Optional.empty() : Optional.of(path.get(path.size() - 1).step());
        return last.map(name -> name.contains("/") ? name.substring(0, name.indexOf('/')) : name)
                .map(name -> built.copies().getOrDefault(name, name));
    }

    /** The text with one more note read or question asked; absent where no fix of them holds. */
    private Optional<String> mended(String text, List<Finding> errors) {
        List<Finding> some = errors.stream().filter(finding -> MENDED.contains(finding.rule())).toList();
        if (some.isEmpty()) {
            return Optional.empty();
        }
        FixTrial trial = new FixTrial(reader, checker);
        List<Finding> found = checker.check(read(text));
        return some.stream().flatMap(finding -> finding.fixes().stream()
                .filter(fix -> fix.edits().stream().allMatch(edit -> edit.at().source().name().equals(procedure.source().name())))
                .filter(fix -> trial.holds(finding, fix, found)).limit(1)).findFirst().map(Fix::applied);
    }
}
