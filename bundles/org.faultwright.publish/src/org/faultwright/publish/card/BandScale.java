/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PrintDocument;
import org.faultwright.publish.page.PrintFonts;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.DecisionZones;

/**
 * The readings a meter can show as a bar: accepted ones white, rejected ones dark, doubtful ones grey with a question mark, to
 * proportion. The readings at each end of a zone stand below it.
 */
final class BandScale {
    private static final double BAR = 4;
    private static final double NUMBERS = 4;
    /** The part of the bar that each outer zone takes; it goes on for ever and is drawn to no scale. */
    private static final double OUTER = 0.24;
    private static final double ONE_SIDED = 0.4;
    private static final double NARROWEST = 1.5;
    /** Of the numbers: their size in points, and what is left free between two in millimetres. */
    private static final int SIZE = 9;
    private static final double GAP = 1.2;
    private static final double POINT = 25.4 / 72;

    /** What a reading in a zone means, with the word that is printed there and the fill; in black and white they are told apart as well. */
    private enum Judgement {
        ACCEPT("accept", "#ffffff", Paint.INK), DOUBTFUL("?", "#c4ccd0", Paint.INK), REJECT("reject", "#3a464d", "#ffffff");

        private final String word;
        private final String fill;
        private final String ink;

        Judgement(String word, String fill, String ink) {
            this.word = word;
            this.fill = fill;
            this.ink = ink;
        }
    }

    private record Zone(Judgement judgement, Optional<Bound> from, Optional<Bound> to) {
        Optional<Exact> width() {
            return from.flatMap(low -> to.map(high -> high.value().minus(low.value())));
        }
    }

    private BandScale() {
    }

    /** @param width in millimetres */
    static void add(Fo into, DecisionZones zones, Unit unit, double width) {
        List<Zone> parts = parts(zones);
        List<Double> widths = widths(parts, width);
        Fo scale = into.add("block-container", "height", PrintDocument.mm(BAR + NUMBERS), "space-before", "0.8mm", "space-after", "0.3mm",
                "line-height", "3.7mm");
        double x = 0;
        for (int i = 0; i < parts.size(); i++) {
            bar(scale, parts.get(i).judgement(), x, widths.get(i));
            x += widths.get(i);
        }
        List<Number> numbers = new ArrayList<>();
        x = 0;
        for (int i = 0; i < parts.size(); i++) {
            numbers.addAll(numbers(parts.get(i), unit, x, widths.get(i)));
            x += widths.get(i);
        }
        apart(numbers, width).forEach(number -> number(scale, number));
    }

    private static List<Zone> parts(DecisionZones zones) {
        List<Zone> parts = new ArrayList<>();
        Stream.of(Stream.of(zones.accept()).map(zone -> zone(Judgement.ACCEPT, zone)), zones.doubtful().stream().map(zone -> zone(Judgement.DOUBTFUL, zone)),
                zones.reject().stream().map(zone -> zone(Judgement.REJECT, zone))).flatMap(all -> all).forEach(parts::add);
        parts.sort((a, b) -> a.from().isEmpty() ? -1 : b.from().isEmpty() ? 1
                : a.from().get().value().compareTo(b.from().get().value()));
        return parts;
    }

    private static Zone zone(Judgement judgement, Interval zone) {
        return new Zone(judgement, zone.lower(), zone.upper());
    }

    private static List<Double> widths(List<Zone> parts, double width) {
        long outer = parts.stream().filter(part -> part.width().isEmpty()).count();
        double inner = parts.stream().flatMap(part -> part.width().stream()).mapToDouble(Exact::doubleValue).sum();
        // One zone with an end beside one without: half and half.
        boolean oneSided = parts.stream().noneMatch(part -> part.judgement() == Judgement.ACCEPT && part.width().isPresent());
        double each = outer == parts.size() ? width / parts.size() : width * (oneSided ? ONE_SIDED : OUTER);
        double room = width - outer * each;
        List<Double> widths = new ArrayList<>();
        for (Zone part : parts) {
            widths.add(part.width().map(own -> inner == 0 ? NARROWEST
                    : Math.max(NARROWEST, own.doubleValue() / inner * room)).orElse(each));
        }
        double drawn = widths.stream().mapToDouble(Double::doubleValue).sum();
        return widths.stream().map(one -> one * width / drawn).toList();
    }

    private static void bar(Fo scale, Judgement judgement, double x, double width) {
        Fo box = scale.add("block-container", "absolute-position", "absolute", "start-indent", "0mm", "left", PrintDocument.mm(x), "top", "0mm", "width",
                PrintDocument.mm(width - 0.25), "height", PrintDocument.mm(BAR - 0.25), "background-color", judgement.fill, "border", "0.5pt solid " + Paint.INK);
        Fo line = box.add("block", "text-align", "center", "font-size", "9pt", "font-weight", "bold", "color", judgement.ink);
        if (width > 9 || judgement == Judgement.DOUBTFUL && width > 2.2) {
            line.verbatim(judgement.word);
        }
    }

    /** @param at where it begins, from the left end of the scale, and its width, in millimetres */
    private record Number(String words, boolean bold, double at, double width) {
        static Number of(String words, boolean bold, double at, boolean toTheLeft) {
            double width = PrintFonts.width(words, bold) * SIZE * POINT;
            return new Number(words, bold, toTheLeft ? at - width : at, width);
        }

        Number moved(double to) {
            return new Number(words, bold, to, width);
        }

        double end() {
            return at + width;
        }
    }

    /** What is read below a zone, at its ends; where both ends of one do not fit below it, in its middle. */
    private static List<Number> numbers(Zone part, Unit unit, double x, double width) {
        if (part.judgement() == Judgement.DOUBTFUL) {
            return List.of();
        }
        boolean bold = part.judgement() == Judgement.ACCEPT;
        List<Number> ends = new ArrayList<>();
        part.from().ifPresent(bound -> ends.add(Number.of(ValueText.of(bound.value(), unit), bold, x, false)));
        part.to().ifPresent(bound -> ends.add(Number.of(ValueText.of(bound.value(), unit), bold, x + width, true)));
        if (ends.size() < 2 || ends.get(0).end() + GAP <= ends.get(1).at()) {
            return ends;
        }
        String low = ends.get(0).words();
        String high = ends.get(1).words();
        String of = high.substring(Math.max(0, high.indexOf(' ')));
        Number both = Number.of((low.endsWith(of) ? low.substring(0, low.length() - of.length()) : low) + " to " + high, bold, 0, false);
        return List.of(both.moved(x + (width - both.width()) / 2));
    }

    /** Moved apart where they would touch, and back in from behind the right end. */
    private static List<Number> apart(List<Number> numbers, double width) {
        List<Number> apart = new ArrayList<>(numbers);
        for (int i = 0; i < apart.size(); i++) {
            double from = i == 0 ? 0 : apart.get(i - 1).end() + GAP;
            apart.set(i, apart.get(i).moved(Math.max(from, apart.get(i).at())));
        }
        double to = width;
        for (int i = apart.size() - 1; i >= 0; i--) {
            apart.set(i, apart.get(i).moved(Math.min(to - apart.get(i).width(), apart.get(i).at())));
            to = apart.get(i).at() - GAP;
        }
        return apart;
    }

    private static void number(Fo scale, Number number) {
        Fo box = scale.add("block-container", "absolute-position", "absolute", "start-indent", "0mm", "left", PrintDocument.mm(number.at()), "top", PrintDocument.mm(BAR + 0.4), "width",
                PrintDocument.mm(number.width() + GAP), "height", PrintDocument.mm(NUMBERS));
        box.add("block", "font-size", SIZE + "pt", "font-weight", number.bold() ? "bold" : "normal", "wrap-option", "no-wrap").text(number.words());
    }
}
