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
import org.faultwright.publish.page.Sheet;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.Zones;

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

    private record Zone(String word, Optional<Bound> from, Optional<Bound> to) {
        Optional<Exact> width() {
            return from.flatMap(low -> to.map(high -> high.value().minus(low.value())));
        }
    }

    private BandScale() {
    }

    /** @param width in millimetres */
    static void add(Fo into, Zones zones, Unit unit, double width) {
        List<Zone> parts = parts(zones);
        List<Double> widths = widths(parts, width);
        Fo scale = into.add("block-container", "height", Sheet.mm(BAR + NUMBERS), "space-before", "0.8mm", "space-after", "0.3mm",
                "start-indent", "0mm", "line-height", "3.7mm");
        double x = 0;
        for (int i = 0; i < parts.size(); i++) {
            bar(scale, parts.get(i).word(), x, widths.get(i));
            x += widths.get(i);
        }
        x = 0;
        for (int i = 0; i < parts.size(); i++) {
            numbers(scale, parts.get(i), unit, x, widths.get(i));
            x += widths.get(i);
        }
    }

    private static List<Zone> parts(Zones zones) {
        List<Zone> parts = new ArrayList<>();
        Stream.of(Stream.of(zones.accept()).map(zone -> zone("accept", zone)), zones.doubtful().stream().map(zone -> zone("?", zone)),
                zones.reject().stream().map(zone -> zone("reject", zone))).flatMap(all -> all).forEach(parts::add);
        parts.sort((a, b) -> a.from().isEmpty() ? -1 : b.from().isEmpty() ? 1
                : a.from().get().value().compareTo(b.from().get().value()));
        return parts;
    }

    private static Zone zone(String word, Interval zone) {
        return new Zone(word, zone.lower(), zone.upper());
    }

    private static List<Double> widths(List<Zone> parts, double width) {
        long outer = parts.stream().filter(part -> part.width().isEmpty()).count();
        double inner = parts.stream().flatMap(part -> part.width().stream()).mapToDouble(Exact::doubleValue).sum();
        // One zone with an end beside one without: half and half.
        boolean oneSided = parts.stream().noneMatch(part -> part.word().equals("accept") && part.width().isPresent());
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

    private static void bar(Fo scale, String word, double x, double width) {
        String fill = switch (word) {
            case "accept" -> "#ffffff";
            case "reject" -> "#3a464d";
            default -> "#c4ccd0";
        };
        Fo box = scale.add("block-container", "absolute-position", "absolute", "left", Sheet.mm(x), "top", "0mm", "width",
                Sheet.mm(width - 0.25), "height", Sheet.mm(BAR - 0.25), "background-color", fill, "border", "0.5pt solid " + Paint.INK);
        Fo line = box.add("block", "text-align", "center", "font-size", "9pt", "font-weight", "bold", "color",
                word.equals("reject") ? "#ffffff" : Paint.INK);
        if (width > 9 || word.equals("?") && width > 2.2) {
            line.verbatim(word);
        }
    }

    private static void numbers(Fo scale, Zone part, Unit unit, double x, double width) {
        if (part.word().equals("?")) {
            return;
        }
        boolean accept = part.word().equals("accept");
        Optional<Bound> left = part.from();
        Optional<Bound> right = part.to();
        if (accept && left.isPresent() && right.isPresent()) {
            number(scale, left.get(), unit, x, width / 2, "start", "bold");
            number(scale, right.get(), unit, x + width / 2, width / 2, "end", "bold");
            return;
        }
        String weight = accept ? "bold" : "normal";
        left.ifPresent(bound -> number(scale, bound, unit, x, width, "start", weight));
        right.ifPresent(bound -> number(scale, bound, unit, x, width, "end", weight));
    }

    private static void number(Fo scale, Bound bound, Unit unit, double x, double width, String side, String weight) {
        Fo box = scale.add("block-container", "absolute-position", "absolute", "left", Sheet.mm(x), "top", Sheet.mm(BAR + 0.4), "width",
                Sheet.mm(width), "height", Sheet.mm(NUMBERS));
        box.add("block", "text-align", side, "font-size", "9pt", "font-weight", weight, "wrap-option", "no-wrap").text(ValueText.of(bound.value(), unit));
    }
}
