/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Picture;
import org.faultwright.procedure.PictureFile;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.page.PrintDocument;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.PlainClauses;
import org.faultwright.publish.plan.StepRun;
import org.faultwright.publish.plan.ToldSettings;
import org.faultwright.publish.plan.UsedDeclarations;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.ReadingBox;

/** One step on paper: its number and order, what to keep off, where and with what, the limit, and the outcomes in a row. */
final class PaperStep {
    private static final Pattern DIGITS = Pattern.compile("_|[^_ ]+");
    /** A step with more than this to say is longer than a column: it may go on in the next one. */
    private static final int LONGEST_WHOLE = 2500;
    /** The distance of lines with settings in their frames; no other line of a step has it. */
    private static final String SETTING = "13pt";
    /** A limit with more letters leaves no room on its line but for the boxes of the reading, which need no word. */
    private static final int LONG_LIMIT = 14;
    /** Of a reading with more digits no second one stands on its line. */
    private static final int MOST_BESIDE = 5;
    private static final double INSET = 3;
    private static final double INSET_ROUTINE = 2;

    private final CardPlan plan;
    private final ToldSettings setUps;
    private final Citations sources;
    private final PaperNotes notes;
    private final PaperOutcomes outcomes;
    /** What each instrument is called at a step, by its name. */
    private final Map<String, String> instruments;
    private final double width;
    /** What goes on over no page. */
    private final Set<StepRun> whole;
    /** How often whoever works may come by the steps that are printed now, with what was seen the time before in front of them. */
    private int visits = 1;
    /** By what the step that is printed now stands in from the column, in millimetres. */
    private double inset;

    PaperStep(CardPlan plan, UsedDeclarations used, Citations sources, PaperNotes notes, Paper paper, Set<StepRun> whole) {
        this.plan = plan;
        this.setUps = new ToldSettings(plan);
        this.sources = sources;
        this.notes = notes;
        this.instruments = Wording.shortly(used.instruments().keySet());
        this.outcomes = new PaperOutcomes(plan);
        this.width = paper.column();
        this.whole = whole;
    }

    /** @param times how often the steps that follow may be come by, each time with boxes of its own */
    void visited(int times) {
        this.visits = times;
    }

    void add(Fo into, PlacedStep placed) {
        boolean together = length(placed) < LONGEST_WHOLE;
        List<PlacedStep> inner = plan.inside(placed);
        Fo box = into.add("block", "id", placed.anchor(), "border-top", "0.7pt solid " + Paint.INK, "padding-top", "0.7mm",
                "space-after", "1.2mm", "keep-together.within-column", together && inner.isEmpty() ? "always" : "auto");
        int beside = plan.besideWarning(placed);
        Fo warned = beside == 0 ? box : box.add("block", "role", "Div", "keep-together.within-column", "always");
        Fo own = inner.isEmpty() ? box : warned.add("block", "role", "Div", "keep-together.within-column", "always",
                "keep-with-next.within-column", "always");
        step(own, placed, "12pt");
        Fo kept = box;
        Optional<StepRun> run = Optional.empty();
        for (int i = 0; i < inner.size(); i++) {
            PlacedStep one = inner.get(i);
            if (run.filter(one.run()::equals).isEmpty()) {
                run = Optional.of(one.run());
                kept = whole.contains(one.run()) ? box.add("block", "role", "Div", "keep-together.within-page", "always") : box;
            }
            Fo line = (i < beside ? warned : kept).add("block", "id", one.anchor(), "start-indent", "3mm", "space-before", "0.6mm",
                    "keep-together.within-column", length(one) < LONGEST_WHOLE ? "always" : "auto");
            step(line, one, "10pt");
            line.add("block", "id", PrintDocument.end(one.anchor()));
        }
        if (placed.step() instanceof Step.Conclude) {
            close(box);
        }
        box.add("block", "id", PrintDocument.end(placed.anchor()));
    }

    /** Where a step has but its title to say, its way on stands at the end of that. */
    private void step(Fo box, PlacedStep placed, String size) {
        inset = (placed.run().caller().isPresent() ? INSET : 0) + (Character.isLetter(placed.label().charAt(0)) ? INSET_ROUTINE : 0);
        notes(box, placed.step().frame());
        Fo head = head(box, placed, size);
        Optional<LimitZones> zones = LimitZones.of(plan.procedure(), placed.step());
        Fo body = Fo.of("block", "role", "Div");
        boolean scale = body(body, placed, zones);
        Optional<Outcome> only = PaperOutcomes.only(placed.step());
        if (body.isEmpty() && only.isPresent() && placed.step().frame().sets().isEmpty() && plan.inside(placed).isEmpty()) {
            fill(Paint.stretched(head));
            outcomes.way(head, placed, only.get().target(), only.get());
            return;
        }
        if (!body.isEmpty()) {
            box.put(body);
        }
        if (plan.inside(placed).isEmpty()) {
            end(box, placed, zones, scale);
        }
    }

    /** The way on from a conclusion, at the end of what is said last. */
    private static void close(Fo box) {
        Fo line = lastLine(box).map(Paint::stretched).orElseGet(() -> Paint.stretched(box.add("block", "role", "P")));
        fill(line);
        line.add("inline", "font-weight", "bold", "font-size", "11pt").verbatim(Wording.ARROW + "\u00A0Close\u00A0the\u00A0job");
        Paint.page(line, PaperEnd.ANCHOR);
    }

    /** What is said last, but for a note: an arrow behind it would seem to be the note's. */
    private static Optional<Fo> lastLine(Fo box) {
        return box.last().flatMap(Fo::last).filter(line -> line.get("role").filter("P"::equals).isPresent());
    }

    private static void fill(Fo line) {
        line.verbatim(" ").add("leader", "leader-length.minimum", "0mm", "leader-length.optimum", "2mm", "leader-length.maximum", "100%");
    }

    private static int length(PlacedStep placed) {
        Step step = placed.step();
        return step.title().length() + step.frame().hint().map(hint -> hint.value().length()).orElse(0) + step.outcomes().size() * 60
                + step.frame().notes().size() * 200;
    }

    private Fo head(Fo box, PlacedStep placed, String size) {
        Step step = placed.step();
        StepFrame frame = step.frame();
        Fo head = box.add("block", "role", "H3", "font-size", "11pt", "line-height", "12.8pt", "keep-with-next.within-column", "always");
        Paint.number(head, placed.label(), size);
        head.verbatim("\u00A0 ");
        head.say("inline", Wording.title(step), "font-weight", "bold");
        String more = Stream.of(
                frame.takes().map(time -> Wording.printed(time.value())),
                frame.waits().map(wait -> "wait " + Wording.printed(wait.value())),
                frame.confirms().map(at -> "confirms the complaint"),
                frame.verifies().map(at -> "proves the repair"))
                .flatMap(Optional::stream).collect(Collectors.joining(" \u00B7 "));
        if (!more.isEmpty()) {
            head.verbatim(" ").say("inline", more, "font-size", "9pt", "color", Paint.FAINT);
        }
        frame.source().ifPresent(source -> sources.cite(head, source));
        return head;
    }

    /** Before the order: who reads that at arm's length acts on it. */
    private void notes(Fo box, StepFrame frame) {
        if (!frame.notes().isEmpty()) {
            Fo told = box.add("block", "role", "Div", "keep-with-next.within-column", "always", "space-after", "0.4mm");
            Wording.notes(frame, plan.scope()).forEach(note -> notes.atStep(told, note));
        }
    }

    /** All between the title and what is seen. @return whether a scale tells the readings of each outcome */
    private boolean body(Fo box, PlacedStep placed, Optional<LimitZones> zones) {
        Step step = placed.step();
        StepFrame frame = step.frame();
        needs(box, step);
        if (step instanceof Step.Measure) {
            hint(box, frame);
        }
        frame.precautions().tries().forEach(name -> Paint.bold(Paint.line(box, "Try first"), Wording.tried(called(name))));
        boolean scale = false;
        if (step instanceof Step.Measure measure) {
            scale = measure(box, measure, zones);
        } else if (step instanceof Step.Observe observe) {
            observe(box, observe);
        } else if (step instanceof Step.Do task) {
            task.adjusts().forEach(one -> one.to().ifPresent(to -> Paint.line(box, "Set").text(one.of()).verbatim(" ")
                    .say("inline", Wording.printed(to.value()), "font-weight", "bold", "font-size", "11pt")));
        } else if (step instanceof Step.Calculate calculate) {
            scale = calculate(box, calculate, zones);
        } else if (step instanceof Step.Perform perform) {
            perform(box, perform, placed);
        }
        PlainClauses.of(step, plan.procedure()).forEach(clause -> Paint.bold(Paint.line(box, clause.key()), clause.words()));
        if (step instanceof Step.Conclude conclude) {
            conclude.report().ifPresent(report -> Paint.line(box, "Report").text("\u201C" + report.value() + "\u201D"));
        }
        StepPictures.of(step, plan.scope()).forEach(picture -> picture(box, picture));
        handling(box, frame);
        frame.precautions().liveBecause().ifPresent(why -> Paint.bold(Paint.line(box, "Live work"), why.value()));
        if (!(step instanceof Step.Measure)) {
            hint(box, frame);
        }
        return scale;
    }

    /** It may hold an order; whoever measures must have read it by then. */
    private static void hint(Fo box, StepFrame frame) {
        frame.hint().ifPresent(hint -> Paint.line(box).text(hint.value()));
    }

    /** As wide as the column at most, with its words below it; what cannot be shown is told in words alone. */
    private void picture(Fo box, Picture picture) {
        PictureFile file = PictureFile.of(picture);
        String words = picture.shows().isBlank() ? picture.file().value() : picture.shows();
        if (file.problem().isPresent()) {
            Paint.line(box, "Picture").text(words + " (cannot be shown: " + picture.file().value() + " " + file.problem().get() + ")");
            return;
        }
        String most = Math.round(width - 4) + "mm";
        box.add("block", "role", "P", "space-before", "0.8mm").add("external-graphic", "src", "url('" + file.asAddress() + "')",
                "inline-progression-dimension.maximum", most, "block-progression-dimension.maximum", "60mm",
                "content-width", "scale-down-to-fit", "content-height", "scale-down-to-fit").spoken(words);
        box.add("block", "role", "P", "font-size", "9pt").text(words);
    }

    private void needs(Fo box, Step step) {
        List<Setting> needs = setUps.toTell(step);
        if (!needs.isEmpty()) {
            chips(box.add("block", "role", "P", "line-height", SETTING), "With", needs);
        }
    }

    /** What the step has set, and where it leads: on one line where it leads to one step only. */
    private void end(Fo box, PlacedStep placed, Optional<LimitZones> zones, boolean scale) {
        List<Setting> sets = placed.step().frame().sets();
        Optional<Outcome> only = PaperOutcomes.only(placed.step());
        Optional<Fo> last = lastLine(box);
        if (sets.isEmpty() && only.isPresent() && last.isPresent()) {
            fill(Paint.stretched(last.get()));
            outcomes.way(last.get(), placed, only.get().target(), only.get());
        } else if (!sets.isEmpty() || only.isPresent()) {
            Fo line = Paint.stretched(last.filter(PaperStep::isSetUp).orElseGet(() -> box.add("block", "role", "P", "line-height", SETTING)));
            chips(line, "Then", sets);
            fill(line);
            only.ifPresent(outcome -> outcomes.way(line, placed, outcome.target(), outcome));
        }
        if (only.isEmpty()) {
            outcomes.add(box, placed, zones, scale, visits);
        }
    }

    private void chips(Fo line, String key, List<Setting> settings) {
        if (!settings.isEmpty()) {
            line.verbatim(line.isEmpty() ? "" : " ").say("inline", key, "color", Paint.FAINT).verbatim("\u00A0");
            for (int i = 0; i < settings.size(); i++) {
                line.verbatim(i == 0 ? "" : " ").add("inline", "border", "0.6pt solid " + Paint.INK, "padding-left", "0.5mm", "padding-right", "0.5mm",
                        "font-weight", "bold").whole(Wording.setting(settings.get(i), plan.scope()));
            }
        }
    }

    private void handling(Fo box, StepFrame frame) {
        List<String> parts = frame.handles().stream().map(name -> plan.scope().part(name).map(Part::title)
                .filter(title -> !title.isBlank()).orElse(name.text())).toList();
        String tools = Wording.tools(frame);
        String hazards = Wording.hazards(frame, plan.scope());
        if (parts.isEmpty() && tools.isEmpty() && hazards.isEmpty()) {
            return;
        }
        Fo line = box.last().filter(PaperStep::isSetUp).orElseGet(() -> box.add("block", "role", "P", "line-height", SETTING));
        key(line, "In hand", String.join(", ", parts));
        key(line, "Tools", tools);
        key(line, "Mind", hazards);
    }

    /** Whether a line tells what a step needs and handles: then what it needs more goes on in it. */
    private static boolean isSetUp(Fo line) {
        return line.get("line-height").filter(SETTING::equals).isPresent();
    }

    private static void key(Fo line, String key, String words) {
        if (!words.isEmpty()) {
            line.verbatim(line.isEmpty() ? "" : " ").say("inline", key, "color", Paint.FAINT).verbatim("\u00A0").text(words);
        }
    }

    private void observe(Fo box, Step.Observe step) {
        step.indicator().flatMap(plan.scope()::indicator).ifPresent(indicator -> {
            Fo line = Paint.line(box, "At");
            Paint.bold(line, indicator.title().isBlank() ? indicator.name().text() : indicator.title());
            indicator.source().ifPresent(source -> sources.cite(line, source));
        });
    }

    private boolean measure(Fo box, Step.Measure step, Optional<LimitZones> zones) {
        step.point().ifPresent(point -> {
            Fo line = Paint.line(box, step.through() ? "Through" : "At");
            Paint.bold(line, Wording.point(point, step, plan.scope()));
            step.against().ifPresent(against -> Paint.bold(line.text(" against "), Wording.point(against, step, plan.scope())));
        });
        step.point().flatMap(plan.scope()::point).flatMap(Point::storedEnergy)
                .ifPresent(stored -> Paint.bold(Paint.line(box, "Stores"), stored.inWords()));
        Optional<LimitStudy> study = LimitStudy.of(plan.procedure(), step);
        Optional<MeterRange> range = study.map(LimitStudy::range);
        List<String> with = new ArrayList<>();
        step.kind().ifPresent(kind -> with.add(kind.value().words()));
        step.sensor().ifPresent(sensor -> with.add("type " + sensor.value()));
        step.instrument().ifPresent(name -> with.add(called(name)));
        step.range().map(named -> Wording.printed(named.value())).or(() -> range.map(one -> Wording.printed(one.upTo())))
                .ifPresent(upTo -> with.add("range " + upTo));
        if (!with.isEmpty()) {
            Paint.line(box, "Measure").text(String.join(", ", with));
        }
        if (!step.rows().isEmpty()) {
            readings(box, step);
            return true;
        }
        limit(box, step.expects(), range, step.kind().map(Written::value), zones.isEmpty());
        return scale(box, zones);
    }

    private String called(Name instrument) {
        return instruments.getOrDefault(instrument.text(), instrument.text());
    }

    /** Several readings as one table: where, the limit, and boxes to write in. */
    private void readings(Fo box, Step.Measure step) {
        step.against().ifPresent(against -> Paint.bold(Paint.line(box, "Against"), Wording.point(against, step, plan.scope())));
        Fo table = box.add("table", "table-layout", "fixed", "width", "100%", "space-before", "0.5mm");
        for (double part : new double[] { 0.4, 0.28, 0.32 }) {
            table.add("table-column", "column-width", PrintDocument.mm(part * width));
        }
        Fo head = table.add("table-header").add("table-row");
        List.of("At", "Limit", "Reading").forEach(word -> cell(head).text(word).set("color", Paint.FAINT));
        Fo rows = table.add("table-body");
        step.readings().forEach(one -> {
            Fo row = rows.add("table-row");
            Fo at = cell(row);
            one.point().ifPresent(point -> Paint.bold(at, Wording.point(point, step, plan.scope())));
            Fo limit = cell(row).set("font-size", "11pt", "font-weight", "bold");
            one.expects().ifPresent(expects -> limit.text(Wording.printed(expects.limit().value())));
            digits(cell(row).set("font-size", "11pt", "line-height", "17pt"), pattern(LimitStudy.of(plan.procedure(), one).map(LimitStudy::range),
                    one.expects(), one.kind().map(Written::value)), one.kind().map(Written::value), one.expects());
        });
    }

    private static Fo cell(Fo row) {
        return row.add("table-cell", "border-bottom", "0.4pt solid " + Paint.LINE, "start-indent", "0mm").add("block");
    }

    private boolean scale(Fo box, Optional<LimitZones> zones) {
        zones.ifPresent(known -> BandScale.add(box, known.zones(), known.unit(), width - inset - 2));
        return zones.isPresent();
    }

    /**
     * The limit in the author's spelling, and boxes for the digits of the reading at the end of the line.
     *
     * @param ends whether the ends of a limit around a nominal value are said too: no scale below shows them
     */
    private void limit(Fo box, Optional<Step.Expectation> expectation, Optional<MeterRange> range, Optional<QuantityKind> kind, boolean ends) {
        boolean worked = ends && expectation.map(expects -> expects.limit().value()).filter(Wording::hasEndsToWorkOut).isPresent();
        Fo line = box.add("block", "role", "P", "text-align-last", "justify", "font-size", "11pt", "line-height", "17pt");
        expectation.ifPresent(expects -> {
            Limit limit = expects.limit().value();
            Paint.bold(line, Wording.printed(limit));
            if (worked) {
                line.verbatim(" ").say("inline", "= " + ends(limit, kind.orElse(QuantityKind.RATIO), range), "font-size", "9pt");
            }
            expects.source().ifPresent(source -> sources.cite(line, source));
        });
        line.verbatim(" ").add("leader");
        boolean room = !worked && expectation.map(expects -> Wording.printed(expects.limit().value()).length()).orElse(0) <= LONG_LIMIT;
        Optional<String> pattern = pattern(range, expectation, kind);
        boolean apart = expectation.isPresent() || pattern.filter(shown -> shown.chars().filter(c -> c == '_').count() > MOST_BESIDE).isPresent();
        for (int visit = 1; visit <= visits; visit++) {
            Fo at = visit == 1 || !apart ? line : box.add("block", "role", "P", "text-align", "end", "font-size", "11pt", "line-height", "17pt");
            if (visit > 1 && !apart) {
                at.verbatim(" ").add("leader");
            }
            at.add("inline", "font-size", "9pt", "color", Paint.FAINT).verbatim(visits > 1 ? Wording.VISITS.get(visit - 1) + "\u00A0\u00A0"
                    : room ? " Reading " : " ");
            digits(at, pattern, kind, expectation);
        }
    }

    /** Such as {@code 340 to 360 °C}: the unit once, that of the boxes for the reading. */
    private static String ends(Limit limit, QuantityKind kind, Optional<MeterRange> range) {
        Unit own = limit.quantities().get(0).unit();
        Unit unit = range.filter(shown -> ReadingBox.pattern(shown).isPresent()).map(shown -> shown.upTo().unit())
                .filter(shown -> shown.dimension().equals(own.dimension()) && !shown.isLogarithmic()).orElse(own);
        return IntervalText.of(limit.interval(kind), unit).replace(" " + unit.symbol() + " to ", " to ");
    }

    /** The boxes for what the display shows; none for a sign where the limit lies above zero, lest it look like a tolerance. */
    private static Optional<String> pattern(Optional<MeterRange> range, Optional<Step.Expectation> expectation, Optional<QuantityKind> kind) {
        Optional<Limit> limit = expectation.map(expects -> expects.limit().value());
        boolean above = limit.flatMap(known -> known.interval(kind.orElse(QuantityKind.RATIO)).lower().map(end -> known.quantities().get(0).unit().fromBase(end.value())))
                .filter(lowest -> lowest.signum() > 0).isPresent();
        return range.flatMap(ReadingBox::pattern).map(shown -> above ? shown.replace("\u00B1 ", "") : shown);
    }

    private static void digits(Fo line, Optional<String> pattern, Optional<QuantityKind> kind, Optional<Step.Expectation> expectation) {
        if (pattern.isEmpty()) {
            String unit = expectation.flatMap(one -> one.limit().value().quantities().stream().findFirst()).map(Quantity::unit)
                    .map(known -> known.symbol()).or(() -> kind.map(QuantityKind::usualUnit)).orElse("");
            blank(line, 24);
            line.text("\u00A0" + unit);
            return;
        }
        // Digits stand as _, with gaps between; what stands together otherwise is a point, a sign or the unit.
        Matcher parts = DIGITS.matcher(pattern.get());
        while (parts.find()) {
            if (parts.group().equals("_")) {
                blank(line, 4.2);
            } else {
                boolean beside = parts.end() == pattern.get().length() && parts.start() > 0 && parts.group().charAt(0) != '.';
                (beside ? line.add("inline", "padding-left", "0.8mm") : line).text(parts.group());
            }
        }
    }

    /** A box to write in. @param width in millimetres */
    private static void blank(Fo line, double width) {
        line.add("inline", "border", "0.6pt solid " + Paint.INK, "padding-top", "0.5mm", "padding-bottom", "0.5mm")
                .add("leader", "leader-pattern", "space", "leader-length", PrintDocument.mm(width));
    }

    private boolean calculate(Fo box, Step.Calculate step, Optional<LimitZones> zones) {
        step.formula().ifPresent(formula -> Paint.bold(Paint.line(box, "Value"), PrintedFormula.of(formula.value(), plan)));
        ComputedStudy.of(plan.procedure(), step).flatMap(ComputedStudy::expected).map(limit -> limit.budget())
                .ifPresent(budget -> budget.expanded().filter(expanded -> expanded.signum() > 0).ifPresent(expanded ->
                        Paint.line(box, "Uncertainty").text("\u00B1"
                                + ValueText.significant(expanded, budget.unit(), 2, RoundingMode.UP) + " (U, k = 2)")));
        limit(box, step.expects(), Optional.empty(), Optional.empty(), zones.isEmpty());
        return scale(box, zones);
    }

    private void perform(Fo box, Step.Perform step, PlacedStep placed) {
        if (!plan.inside(placed).isEmpty()) {
            return;
        }
        step.routine().ifPresent(name -> {
            Fo line = Paint.line(box);
            Optional<CardSection> routine = plan.routine(name);
            if (routine.isPresent()) {
                line.text("Go and come back: ");
                line.add("basic-link", "internal-destination", CardPlan.anchor(routine.get()), "font-weight", "bold", "font-size", "11pt")
                        .spoken("To routine " + routine.get().letter()).verbatim(Wording.ARROW + "\u00A0Routine\u00A0" + routine.get().letter());
                Paint.page(line, CardPlan.anchor(routine.get()));
            } else {
                line.text(name.text());
            }
        });
    }
}
