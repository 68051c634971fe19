/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PrintDocument;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.LikelyFaults;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.UsedDeclarations;

/** The front of a printed card: what is read before anything is touched. */
final class PaperFront {
    private static final double CODE = 21;
    private static final String ALL_STEPS = "All steps (\u25A0 ends the job)";

    private final CardPlan plan;
    private final UsedDeclarations used;
    private final PaperNotes notes;
    private final Publication publication;

    PaperFront(CardPlan plan, UsedDeclarations used, PaperNotes notes) {
        this.plan = plan;
        this.used = used;
        this.notes = notes;
        this.publication = plan.publication();
    }

    /** Across all columns. @param room the width, in millimetres */
    void head(Fo flow, double room) {
        Fo head = flow.add("block", "span", "all", "padding-bottom", "2.5mm");
        Fo table = head.add("table", "table-layout", "fixed", "width", "100%");
        table.add("table-column", "column-width", PrintDocument.mm(room - CODE - 2));
        table.add("table-column", "column-width", PrintDocument.mm(CODE + 2));
        Fo row = table.add("table-body").add("table-row");
        Fo words = row.add("table-cell");
        words.add("block", "role", "H1", "font-size", "17pt", "line-height", "20pt", "font-weight", "bold").text(publication.title());
        Procedure procedure = plan.procedure();
        procedure.equipment().ifPresent(equipment -> words.add("block", "font-size", "11pt", "line-height", "14pt", "font-weight", "bold")
                .text(Wording.equipment(equipment)));
        if (!procedure.complaints().isEmpty()) {
            Paint.line(words, "Complaints such as").text(procedure.complaints().stream()
                    .map(complaint -> "\u201C" + complaint.value() + "\u201D").collect(Collectors.joining(", ")));
        }
        Fo revision = Paint.line(words);
        if (publication.status() == Revision.Status.DRAFT) {
            revision.add("inline", "background-color", Paint.INK, "color", "#ffffff", "font-weight", "bold").verbatim("\u00A0")
                    .text(publication.revision()).verbatim("\u00A0");
            revision.text(" neither reviewed nor released: do not work by it");
        } else {
            Paint.bold(revision, publication.revision());
        }
        revision.text(Wording.record(procedure) + " \u00B7 digest " + publication.shortDigest() + CardCode.PURPOSE);
        CardCode.add(row.add("table-cell").add("block", "text-align", "end", "line-height", "0pt"), publication, CODE);
        job(head, room);
        if (publication.hasErrors()) {
            open(head);
        }
    }

    /** Blanks for the job in hand. */
    static void job(Fo into, double room) {
        Fo table = into.add("table", "table-layout", "fixed", "width", "100%", "space-before", "1.5mm", "space-after", "2mm");
        Wording.JOB.forEach(name -> table.add("table-column", "column-width", PrintDocument.mm(room / Wording.JOB.size())));
        Fo row = table.add("table-body").add("table-row", "height", "9mm");
        Wording.JOB.forEach(name -> row.add("table-cell", "border", "0.6pt solid " + Paint.LINE, "padding", "0.4mm 1mm")
                .add("block", "font-size", "9pt", "line-height", "10pt", "color", Paint.FAINT).text(name));
    }

    /** What must be put right before this becomes a card to work by. */
    private void open(Fo into) {
        Fo box = into.add("block", "border", "2pt solid #a3121c", "padding", "1mm 2mm", "margin", "0mm", "space-after", "2mm");
        box.add("block", "role", "H2", "font-size", "11pt", "line-height", "14pt", "font-weight", "bold")
                .text("Draft with open errors: do not work by this");
        for (Finding finding : publication.errors()) {
            box.add("block", "role", "P", "space-before", "0.5mm").text(finding.message() + " " + finding.advice() + " At " + publication.place(finding) + ", "
                    + finding.rule() + ".");
        }
    }

    /** In the columns. @param width of a column, in millimetres */
    void columns(Fo flow, double width) {
        dangers(flow);
        faults(flow, width);
        Paint.heading(flow, "You will need");
        Paint.boxes(flow, BenchPreparation.instruments(plan, used));
        List<String> tools = BenchPreparation.tools(used);
        List<String> parts = BenchPreparation.parts(used);
        if (!tools.isEmpty() || !parts.isEmpty()) {
            // in one row, so that the two need no more height than they have things
            Fo row = Paint.line(flow);
            Paint.boxesInRow(row, BenchPreparation.TOOLS, tools);
            Paint.boxesInRow(row, BenchPreparation.PARTS, parts);
        }
        List<String> arrival = BenchPreparation.onArrival(used);
        if (!arrival.isEmpty()) {
            Paint.heading(flow, "Condition on arrival: check that each is so");
            Fo line = Paint.line(flow);
            arrival.forEach(one -> line.verbatim(Wording.BOX + "\u00A0").whole(one).verbatim("\u2002 "));
        }
        chart(flow, width);
    }

    private void dangers(Fo flow) {
        Paint.heading(flow, "Dangers: read before anything else");
        Fo caution = Paint.line(flow);
        Paint.bold(caution, Caution.FIRST).verbatim(" ").text(Caution.TRAINED);
        notes.all().forEach((note, steps) -> {
            Fo box = flow.add("block", "role", "P", "border", "0.8pt solid #000000", "padding", "0.4mm 1mm 0.6mm 1mm", "margin", "0mm",
                    "space-before", "1mm", "keep-together.within-column", "always");
            Paint.signal(box, note.word());
            box.say("inline", notes.number(note), "color", Paint.FAINT).verbatim(" ");
            Paint.bold(box, note.hazard()).verbatim(" ").text(note.consequence() + " " + note.avoid());
            box.verbatim(" ").say("inline", steps(steps), "color", Paint.FAINT);
        });
    }

    private String steps(List<Step> steps) {
        List<String> labels = plan.placed().filter(placed -> steps.contains(placed.step())).map(PlacedStep::label).toList();
        return (labels.size() == 1 ? "Step " : "Steps ") + String.join(", ", labels);
    }

    private void faults(Fo flow, double width) {
        List<LikelyFaults.Case> cases = plan.likely().cases();
        if (cases.isEmpty()) {
            return;
        }
        Paint.heading(flow, "What it can be");
        Fo table = flow.add("table", "table-layout", "fixed", "width", "100%", "keep-together.within-column", "always");
        double[] widths = { width - 11 - 16 - 21, 11, 16, 21 };
        for (double column : widths) {
            table.add("table-column", "column-width", PrintDocument.mm(column));
        }
        Fo head = table.add("table-header").add("table-row");
        List.of("Fault", "Cases", "Time", "Ends at").forEach(word -> head.add("table-cell", "border-bottom", "0.5pt solid " + Paint.LINE, "padding-bottom", "0.6mm")
                .add("block", "text-align", word.equals("Fault") ? "start" : "end", "color", Paint.FAINT).text(word));
        Fo body = table.add("table-body");
        for (LikelyFaults.Case one : cases) {
            Fo row = body.add("table-row");
            row.add("table-cell").add("block").text(title(one.fault()));
            cell(row, one.fault().cases().map(count -> count.value().toString()).orElse(PrintedNumbers.percent(one.weight())));
            cell(row, one.seconds().map(TimeText::upToMinutes).orElse("open"));
            Fo end = row.add("table-cell").add("block", "text-align", "end");
            one.path().stream().reduce((first, second) -> second).flatMap(this::placed).ifPresentOrElse(
                    step -> Paint.arrow(end, step), () -> end.text("no step finds it"));
        }
        expected(flow);
    }

    private void expected(Fo flow) {
        plan.likely().inAll().ifPresent(all -> all.expected().ifPresent(time -> Paint.line(flow, "Time to expect").text(
                TimeText.upToMinutes(time) + all.worst().map(worst -> ", at worst " + TimeText.upToMinutes(worst)).orElse(""))));
    }

    private Optional<PlacedStep> placed(PathStep step) {
        return plan.sections().get(0).steps().stream().filter(one -> one.step().name().text().equals(step.step())).findFirst();
    }

    private static void cell(Fo row, String words) {
        row.add("table-cell").add("block", "text-align", "end").text(words);
    }

    static String title(Fault fault) {
        return fault.title().isBlank() ? fault.name().text() : fault.title();
    }

    private void chart(Fo flow, double width) {
        if (plan.sections().get(0).steps().isEmpty()) {
            return;
        }
        Paint.heading(flow, ALL_STEPS);
        new PaperChart(width, false).add(flow.add("block"), plan, plan.sections().get(0));
        plan.sections().stream().skip(1).forEach(section -> {
            Fo line = flow.add("block", "role", "P", "font-size", "9pt", "line-height", "11pt");
            line.add("basic-link", "internal-destination", CardPlan.anchor(section), "font-weight", "bold")
                    .spoken("To routine " + section.letter()).verbatim(section.letter());
            line.verbatim("\u00A0").text("Routine: " + PaperCard.title(section.graph()));
            Paint.page(line, CardPlan.anchor(section));
        });
    }
}
