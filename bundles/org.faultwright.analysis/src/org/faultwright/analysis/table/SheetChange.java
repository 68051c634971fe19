/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.CoinedName;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.analysis.faults.KeptArrows;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityText;

/**
 * Changes of the fault table, gathered and written into the text as one fix: remarks and layout stay. What cannot be written is told, and then
 * nothing is.
 */
public final class SheetChange {
    private static final int LONGEST = 200;
    private static final String TAKES = "takes";
    private static final String CASES = "cases";

    private final FaultSheet sheet;
    private final Procedure procedure;
    private final ClauseText clauses;
    private final List<String> refused = new ArrayList<>();
    private final List<Fix.Edit> edits = new ArrayList<>();
    private final Map<String, Map<String, String>> shown = new LinkedHashMap<>();
    private final Map<String, NewFault> newFaults = new LinkedHashMap<>();
    private final Map<String, NewStep> newSteps = new LinkedHashMap<>();
    private final Set<String> taken = new HashSet<>();

    /** A column to be added. @param outcomes as they are said; none where they are to be what faults show there */
    private record NewStep(String title, List<String> outcomes) {
    }

    /** A row to be added. */
    private static final class NewFault {
        private final String title;
        private String cases = "1";
        private String remedies = "";

        NewFault(String title) {
            this.title = title;
        }
    }

    /** @param sheet of the text as it stands */
    public SheetChange(FaultSheet sheet) {
        this.sheet = sheet;
        this.procedure = sheet.procedure();
        this.clauses = new ClauseText(procedure.source());
        names().map(Name::text).forEach(taken::add);
    }

    private Stream<Name> names() {
        Stream<Declaration> scope = procedure.scope().all();
        Stream<Name> shownAt = procedure.faults().stream().flatMap(fault -> Stream.concat(fault.shows().stream().map(showing -> showing.step()),
                fault.remedies().stream()));
        return Stream.of(scope.map(Declaration::name), procedure.faults().stream().map(Fault::name), procedure.writtenSteps().stream().map(Step::name),
                shownAt, Stream.of(procedure.name())).flatMap(names -> names);
    }

    // ---- cells

    /** Writes into one cell of the table what was typed there. */
    public void set(SheetRow row, SheetColumn column, String typed) {
        if (row instanceof SheetRow.OfFault fault) {
            set(fault.name(), column, typed);
        } else if (column instanceof SheetColumn.OfStep step) {
            if (row instanceof SheetRow.Takes) {
                takes(step.name(), typed);
            } else {
                normal(step.name(), typed);
            }
        }
    }

    private void set(String fault, SheetColumn column, String typed) {
        if (column instanceof SheetColumn.OfStep step) {
            shows(fault, step.name(), typed);
        } else if (column instanceof SheetColumn.Cases) {
            cases(fault, typed);
        } else if (column instanceof SheetColumn.Remedy) {
            remedies(fault, typed);
        } else if (column instanceof SheetColumn.Words) {
            title(fault, typed);
        }
    }

    /** What a fault shows at a step; nothing typed takes the entry out. @param fault one of the table or one that was added here */
    public void shows(String fault, String step, String typed) {
        Optional<FaultSheet.Column> column = sheet.column(step);
        TypedCell cell = TypedCell.of(typed, step, column.flatMap(FaultSheet.Column::step), column.map(FaultSheet.Column::outcomes).orElse(List.of()));
        if (cell.refused().isPresent()) {
            refuse(fault, step, cell.refused().get());
        } else if (newFaults.containsKey(fault) || !isWritten(fault, step, cell.written())) {
            shown.computeIfAbsent(fault, name -> new LinkedHashMap<>()).put(step, cell.written());
        }
    }

    private boolean isWritten(String fault, String step, String words) {
        Optional<FaultSheet.Column> column = sheet.column(step);
        List<String> now = fault(fault).stream().flatMap(one -> one.shows().stream())
                .filter(showing -> showing.step().text().equals(step)).map(SheetCells::words).toList();
        return now.isEmpty() ? words.isEmpty() : now.size() == 1 && TypedCell.of(now.get(0), step, column.flatMap(FaultSheet.Column::step),
                column.map(FaultSheet.Column::outcomes).orElse(List.of())).written().equals(words);
    }

    /** How often a fault was met; nothing typed leaves it unsaid. */
    public void cases(String fault, String typed) {
        String number = typed.strip();
        if (!number.isEmpty() && !number.matches("\\d{1,9}(\\.\\d{1,3})?")) {
            refuse(fault, CASES, "\"" + shortened(number) + "\" is no number of cases; write one such as 12 or 2.5.");
            return;
        }
        if (newFaults.containsKey(fault)) {
            newFaults.get(fault).cases = number.isEmpty() ? "1" : number;
            return;
        }
        fault(fault).filter(one -> !one.cases().map(cases -> cases.at().text()).orElse("").equals(number)).ifPresent(one -> {
            Optional<SourceRange> there = one.cases().map(Written::at);
            Optional<Fix.Edit> edit = there.isPresent() && number.isEmpty() ? clauses.without(CASES, there.get())
                    : there.map(at -> ClauseText.replaced(at, number)).or(() -> clauses.first(one.at(), one.name().at().end(), CASES + " " + number));
            write(edit, fault, CASES);
        });
    }

    /** What is broken, in the author's words; the name stays. */
    public void title(String fault, String typed) {
        Optional<String> words = words(typed, fault, "words");
        fault(fault).filter(one -> words.isPresent() && !one.title().equals(words.get())).ifPresent(one -> edits.add(clauses.quotedBehind(one.name().at().end())
                .map(at -> ClauseText.replaced(at, Quotation.of(words.get())))
                .orElseGet(() -> clauses.inserted(one.name().at().end(), " " + Quotation.of(words.get())))));
    }

    /** The steps that repair a fault, with commas between them; steps that are not written yet may be named. */
    public void remedies(String fault, String typed) {
        List<String> names = Stream.of(typed.split("[,;]")).map(String::strip).filter(name -> !name.isEmpty()).map(this::remedy).distinct().toList();
        Optional<String> wrong = names.stream().filter(name -> !name.matches("[\\p{L}_][\\p{L}\\p{N}_]{0,60}")).findFirst();
        if (wrong.isPresent()) {
            refuse(fault, "remedy", "\"" + shortened(wrong.get()) + "\" is no name of a step; write names with commas between them.");
            return;
        }
        String list = String.join(", ", names);
        if (newFaults.containsKey(fault)) {
            newFaults.get(fault).remedies = list;
            return;
        }
        fault(fault).filter(one -> !one.remedies().stream().map(Name::text).toList().equals(names)).ifPresent(one -> {
            SourceRange there = one.remedies().isEmpty() ? null : span(one.remedies().get(0).at(), one.remedies().get(one.remedies().size() - 1).at());
            if (there != null && Remarks.in(there.text()).isEmpty()) {
                write(list.isEmpty() ? clauses.without("remedy", there) : Optional.of(ClauseText.replaced(there, list)), fault, "remedy");
            } else if (there != null) {
                refuse(fault, "remedy", "There is a remark between the remedies; change them in the text.");
            } else {
                int last = Stream.concat(one.shows().stream().map(showing -> showing.at().end()), one.cases().stream().map(cases -> cases.at().end()))
                        .max(Integer::compare).orElse(-1);
                write(last < 0 ? clauses.first(one.at(), one.name().at().end(), "remedy " + list) : Optional.of(clauses.behind(one.at(), last, "remedy " + list)),
                        fault, "remedy");
            }
        });
    }

    private String remedy(String typed) {
        return procedure.writtenSteps().stream().filter(step -> step instanceof Step.Do && step.title().equals(typed)).map(step -> step.name().text()).findFirst()
                .orElse(typed);
    }

    private static SourceRange span(SourceRange first, SourceRange last) {
        return new SourceRange(first.source(), first.offset(), last.end() - first.offset());
    }

    /** How long a step takes; nothing typed leaves it unsaid. */
    public void takes(String step, String typed) {
        String time = typed.strip();
        QuantityText.Reading read = QuantityText.read(time.isEmpty() ? "0 s" : time);
        if (read.problem().isPresent() || time.startsWith("-") || TimeText.seconds(read.quantity()).isEmpty()) {
            refuse(step, TAKES, "\"" + shortened(time) + "\" is no time; write one such as 90 s or 2 min.");
            return;
        }
        Optional<Step> declared = step(step);
        if (declared.isEmpty()) {
            refuse(step, TAKES, "The step is not written yet; \"Draft the steps\" writes it.");
            return;
        }
        Step one = declared.get();
        // what its routine takes stands at the routine: another time of the step gets a line of its own
        Optional<SourceRange> there = one.frame().takes().map(Written::at).filter(at -> at.length() > 0);
        if (there.map(SourceRange::text).orElse("").equals(time)) {
            return;
        }
        write(there.isPresent() && time.isEmpty() ? clauses.without(TAKES, there.get()) : there.map(at -> ClauseText.replaced(at, time))
                .or(() -> clauses.first(one.at(), one.name().at().end(), TAKES + " " + time)), step, TAKES);
    }

    /** What a sound unit shows at a step; nothing typed leaves it unsaid. */
    public void normal(String step, String typed) {
        Optional<Step> declared = step(step).filter(one -> !one.outcomes().isEmpty());
        if (declared.isEmpty()) {
            refuse(step, "normal", "The step has no outcomes yet; \"Draft the steps\" gives it some.");
            return;
        }
        Step one = declared.get();
        Optional<Outcome> marked = one.outcomes().stream().filter(Outcome::normal).findFirst();
        String now = sheet.column(step).map(FaultSheet.Column::normal).orElse("");
        if (typed.strip().equals(now)) {
            return;
        }
        if (!now.isEmpty() && marked.isEmpty()) {
            refuse(step, "normal", "\"" + now + "\" is normal there by " + (one instanceof Step.Perform ? "its routine" : "its limit") + "; change that in the text.");
            return;
        }
        String word = typed.strip();
        List<Outcome> begun = one.outcomes().stream().filter(outcome -> !word.isEmpty() && outcome.key().startsWith(word)).toList();
        Optional<Outcome> wanted = begun.stream().filter(outcome -> outcome.key().equals(word) || begun.size() == 1).findFirst();
        if (!word.isEmpty() && wanted.isEmpty()) {
            refuse(step, "normal", "One outcome is normal: " + one.outcomes().stream().map(Outcome::key).collect(Collectors.joining(", ")) + ".");
            return;
        }
        if (wanted.filter(Outcome::isUnderstood).isPresent()) {
            refuse(step, "normal", "\"" + wanted.get().key() + "\" stands nowhere in the step: it leads where \"otherwise\" says. Write its line in the text first.");
            return;
        }
        marked.ifPresent(outcome -> clauses.sign("normal", outcome.head().at().end(), outcome.at().end())
                .ifPresent(at -> edits.add(ClauseText.replaced(new SourceRange(at.source(), at.offset(), at.length() + blanksBehind(at)), ""))));
        wanted.ifPresent(outcome -> edits.add(clauses.inserted(outcome.head().at().end(), " normal")));
    }

    private static int blanksBehind(SourceRange at) {
        String text = at.source().content();
        int end = at.end();
        return end < text.length() && text.charAt(end) == ' ' ? 1 : 0;
    }

    // ---- rows and columns

    /** A row at the end of the table. @return the name it gets, by which its cells are filled; empty where it is refused */
    public String addFault(String typed) {
        Optional<String> words = words(typed, "A new fault", "words");
        if (words.isEmpty()) {
            return "";
        }
        String name = free(words.get(), "Fault");
        newFaults.put(name, new NewFault(words.get()));
        shown.put(name, new LinkedHashMap<>());
        return name;
    }

    /**
     * A column: a question. While the steps are still to be drafted, that gives it its outcomes. Else they lead to a conclusion that refers the unit, until
     * the author leads them elsewhere.
     *
     * @return its name; empty where it is refused
     */
    public String addStep(String typed) {
        return addStep(typed, List.of());
    }

    /** The same with its outcomes said, two or more. */
    public String addStep(String typed, List<String> outcomes) {
        Optional<String> words = words(typed, "A new step", "words");
        if (words.isEmpty()) {
            return "";
        }
        List<String> said = outcomes.stream().map(String::strip).filter(outcome -> !outcome.isEmpty()).toList();
        if (said.size() == 1 || said.size() != Set.copyOf(said).size() || said.stream().anyMatch(outcome -> !outcome.matches("[\\p{L}][\\p{L}\\p{N} -]{0,59}"))) {
            refuse("A new step", "outcomes", "Say two or more, each a word that begins with a letter, with commas between them; or none.");
            return "";
        }
        if (!said.isEmpty() && referring().isEmpty()) {
            refuse("A new step", "outcomes", "There is no conclusion yet that refers the unit, to which they could lead. Leave them out: the draft gives the step its outcomes.");
            return "";
        }
        String name = free(words.get(), "Step");
        newSteps.put(name, new NewStep(words.get(), said));
        return name;
    }

    /** Where outcomes lead that nobody has led anywhere: to the last conclusion that refers the unit to somebody. */
    private Optional<String> referring() {
        return procedure.writtenSteps().stream().filter(step -> step instanceof Step.Conclude end && end.refersTo().isPresent()).map(step -> step.name().text())
                .reduce((one, next) -> next);
    }

    private String free(String words, String otherwise) {
        String coined = CoinedName.of(words, true);
        String name = coined.isEmpty() || Character.isDigit(coined.charAt(0)) || coined.matches("R\\d+") ? otherwise + coined : coined;
        String free = name;
        for (int i = 2; !taken.add(free); i++) {
            free = name + i;
        }
        return free;
    }

    private Optional<String> words(String typed, String of, String what) {
        String words = typed.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
        if (words.isEmpty() || words.length() > LONGEST) {
            refuse(of, what, words.isEmpty() ? "Say it in a few words." : "These are more than " + LONGEST + " characters; shorten them.");
            return Optional.empty();
        }
        return Optional.of(words);
    }

    // ---- the whole

    /** Something that cannot be written, for the list of what was refused. */
    void refuse(String row, String column, String sentence) {
        boolean isName = sheet.row(row).isPresent() || sheet.column(row).isPresent() || newFaults.containsKey(row);
        refused.add((isName ? '"' + row + '"' : row) + ", " + column + ": " + sentence);
    }

    private void write(Optional<Fix.Edit> edit, String row, String column) {
        edit.ifPresentOrElse(edits::add, () -> refuse(row, column, "The words of the text there are broken or have a remark among them; change them in the text."));
    }

    /** What cannot be written, each with its place and what to do; empty where all can. */
    public List<String> refused() {
        return List.copyOf(refused);
    }

    /** The change of the text; absent where something is refused, or nothing changes. @param title what it does, as an order */
    public Optional<Fix> fix(String title) {
        if (!refused.isEmpty()) {
            return Optional.empty();
        }
        List<String> order = Stream.concat(sheet.columns().stream().map(FaultSheet.Column::name), newSteps.keySet().stream()).toList();
        List<Fix.Edit> all = new ArrayList<>(edits);
        shown.forEach((name, cells) -> fault(name).ifPresent(fault -> all.addAll(new ShownEntries(fault, clauses, order).changed(cells))));
        addedFaults(order).ifPresent(all::add);
        addedSteps().ifPresent(all::add);
        return all.isEmpty() ? Optional.empty() : Optional.of(inItsLines(KeptArrows.kept(procedure, new Fix(title, ClauseText.merged(all)))));
    }

    /** With its lines ended as those of the text. */
    private Fix inItsLines(Fix fix) {
        String content = procedure.source().content();
        return new Fix(fix.title(), fix.edits().stream().map(edit -> new Fix.Edit(edit.at(), Fix.inLinesAs(content, edit.replacement()))).toList());
    }

    private Optional<Fix.Edit> addedFaults(List<String> order) {
        if (newFaults.isEmpty()) {
            return Optional.empty();
        }
        String blocks = newFaults.entrySet().stream().map(entry -> block(entry.getKey(), entry.getValue(), order)).collect(Collectors.joining());
        Optional<SourceRange> last = procedure.faults().stream().map(Fault::at).reduce((a, b) -> a.end() > b.end() ? a : b);
        if (last.isPresent()) {
            return Optional.of(clauses.inserted(clauses.behindBlock(last.get()), "\n" + blocks.stripTrailing()));
        }
        Optional<Integer> first = Stream.concat(procedure.begin().flatMap(begin -> beginning(begin.at())).stream(),
                Stream.concat(procedure.writtenSteps().stream().map(step -> step.at().offset()), procedure.examples().stream().map(one -> one.at().offset())))
                .min(Integer::compare);
        return Optional.of(first.map(offset -> clauses.inserted(clauses.aboveRemarks(offset), blocks + "\n"))
                .orElseGet(() -> clauses.inserted(clauses.end(), "\n" + blocks)));
    }

    private Optional<Integer> beginning(SourceRange target) {
        String before = target.source().content().substring(0, target.offset()).stripTrailing();
        String word = before.endsWith("at") ? before.substring(0, before.length() - 2).stripTrailing() : "";
        return word.endsWith("begin") ? Optional.of(word.length() - "begin".length()) : Optional.empty();
    }

    private String block(String name, NewFault fault, List<String> order) {
        Map<String, String> cells = shown.getOrDefault(name, Map.of());
        Set<String> steps = new LinkedHashSet<>(order);
        String shows = steps.stream().filter(step -> !cells.getOrDefault(step, "").isEmpty()).map(step -> step + " " + cells.get(step))
                .collect(Collectors.joining(", "));
        return "fault " + name + " " + Quotation.of(fault.title) + " {\n    cases " + fault.cases + "\n"
                + (shows.isEmpty() ? "" : "    shows " + shows + "\n") + (fault.remedies.isEmpty() ? "" : "    remedy " + fault.remedies + "\n") + "}\n";
    }

    private Optional<Fix.Edit> addedSteps() {
        if (newSteps.isEmpty()) {
            return Optional.empty();
        }
        String blocks = newSteps.entrySet().stream().map(entry -> "check " + entry.getKey() + " " + Quotation.of(entry.getValue().title())
                + " {\n    takes 1 min\n" + outcomes(entry.getKey(), entry.getValue()) + "}\n").collect(Collectors.joining());
        List<Step> steps = procedure.writtenSteps();
        Optional<SourceRange> last = steps.stream().filter(step -> !(step instanceof Step.Conclude) && !(step instanceof Step.Do)).map(Step::at)
                .reduce((a, b) -> a.end() > b.end() ? a : b).or(() -> steps.stream().map(Step::at).reduce((a, b) -> a.end() > b.end() ? a : b));
        return Optional.of(last.map(at -> clauses.inserted(clauses.behindBlock(at), "\n" + blocks.stripTrailing()))
                .orElseGet(() -> clauses.inserted(clauses.end(), "\n" + blocks)));
    }

    /** Lines for the outcomes of a new step; none where the steps are still to be drafted. */
    private String outcomes(String name, NewStep step) {
        Optional<String> leadsTo = referring().filter(end -> sheet.isLaidOut() || !step.outcomes().isEmpty());
        List<String> words = step.outcomes().isEmpty() ? shownAt(name) : step.outcomes().stream().map(ResultWords::written).toList();
        return leadsTo.map(end -> words.stream().map(word -> "    " + word + " -> " + end + "\n").collect(Collectors.joining())).orElse("");
    }

    /** What faults show at a new step, and something else beside it; none where a reading is among it. */
    private List<String> shownAt(String step) {
        Set<String> words = new LinkedHashSet<>();
        shown.values().stream().map(cells -> cells.getOrDefault(step, "")).forEach(written -> words.addAll(TypedCell.words(written)));
        if (Set.of("yes", "no").containsAll(words)) {
            return List.of("yes", "no");
        }
        if (words.size() == 1) {
            words.add("other");
        }
        return words.stream().anyMatch(word -> Character.isDigit(word.charAt(0)) || word.startsWith("-")) ? List.of() : List.copyOf(words);
    }

    private Optional<Fault> fault(String name) {
        return sheet.row(name).map(FaultSheet.Row::fault);
    }

    private Optional<Step> step(String name) {
        return sheet.column(name).flatMap(FaultSheet.Column::step);
    }

    private static String shortened(String typed) {
        String line = typed.replaceAll("[\\p{Cntrl}\\s]+", " ").replace('"', '\'').strip();
        return line.length() > 40 ? line.substring(0, 40) + "\u2026" : line;
    }
}
