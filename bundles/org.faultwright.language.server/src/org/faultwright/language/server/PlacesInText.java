/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.faultwright.language.blocks.TextParts;
import org.faultwright.language.blocks.TextParts.Part;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.ThingKind;

/**
 * The places of a text that hold what somebody looks for. A text is not parsed for it, so that a folder of thousands is looked through
 * while somebody types, and damaged texts as well as sound ones.
 */
public final class PlacesInText {
    private static final Set<ThingKind> HEADING = EnumSet.of(ThingKind.PROCEDURE, ThingKind.LIBRARY, ThingKind.EQUIPMENT, ThingKind.COMPLAINT);
    private static final Pattern NUMBER = Pattern.compile("\\bnumber\\s+\"[^\"]*\"");
    private static final Pattern MEANS = Pattern.compile("\\bmeans\\s+\"");

    private final SourceText source;
    private final TextParts parts;
    private final int[] starts;

    private PlacesInText(SourceText source) {
        this.source = source;
        this.parts = TextParts.of(source.content());
        this.starts = starts(source.content());
    }

    /**
     * Where the words stand. All of them must stand in one declaration or step with the comment before it; where no one has them all, the
     * rest of them may stand in what the procedure is called. The lines with most of them are given. No words at all stand for every declaration of that kind.
     */
    public static List<FoundPlace> of(SourceText source, WantedWords wanted, SearchScope sought) {
        if (wanted.isEmpty() && sought == SearchScope.EVERYTHING
                || !wanted.allInPlain(WantedWords.plain(source.content()) + "\n" + WantedWords.plain(source.fileName()))) {
            return List.of();
        }
        PlacesInText text = new PlacesInText(source);
        return wanted.isEmpty() ? text.declared(sought) : text.holding(wanted, sought);
    }

    /** Where a text names what is declared there, in this text or in a library. */
    public static List<FoundPlace> naming(OpenText text, Name declared) {
        PlacesInText places = new PlacesInText(text.source());
        return NamesInText.of(text).usesOf(declared).stream().map(at -> {
            boolean here = at.offset() == declared.at().offset() && at.source().name().equals(declared.at().source().name());
            FoundPlace place = places.place(at);
            return new FoundPlace(place.kind(), here, place.name(), at);
        }).toList();
    }

    private List<FoundPlace> declared(SearchScope sought) {
        List<FoundPlace> all = new ArrayList<>();
        int end = source.content().length();
        int last = end == 0 ? 0 : source.line(end);
        for (int line = 1; line <= last; line++) {
            String words = source.lineText(line);
            int start = start(line) + words.length() - words.stripLeading().length();
            Optional<Part> part = parts.at(start);
            boolean begins = part.filter(one -> one.start() == start).isPresent();
            FoundPlace place = place(new SourceRange(source, start, words.strip().length()));
            if (!words.isBlank() && sought.takes(place.kind()) && (begins || place.kind() == ThingKind.CODE || place.kind() == ThingKind.COMMENT)) {
                all.add(place);
            }
        }
        return all;
    }

    private List<FoundPlace> holding(WantedWords wanted, SearchScope sought) {
        Map<Integer, List<Integer>> lines = linesOfParts();
        String heading = heading(lines);
        Map<List<Integer>, String> plain = new LinkedHashMap<>();
        lines.values().forEach(some -> plain.put(some, some.stream().map(line -> WantedWords.plain(source.lineText(line))).collect(Collectors.joining("\n"))));
        List<FoundPlace> found = places(plain, wanted, sought, wanted::allInPlain);
        return found.isEmpty() ? places(plain, wanted, sought, part -> wanted.isCompletedBy(heading, part)) : found;
    }

    private List<FoundPlace> places(Map<List<Integer>, String> parts, WantedWords wanted, SearchScope sought, Predicate<String> holds) {
        List<FoundPlace> found = new ArrayList<>();
        parts.forEach((lines, words) -> {
            if (holds.test(words)) {
                found.addAll(best(lines, wanted, sought));
            }
        });
        return found;
    }

    private List<FoundPlace> best(List<Integer> lines, WantedWords wanted, SearchScope sought) {
        List<FoundPlace> best = new ArrayList<>();
        int most = 1;
        for (int line : lines) {
            String words = source.lineText(line);
            int count = wanted.countIn(WantedWords.plain(words));
            if (count >= most) {
                int[] at = wanted.firstIn(words);
                FoundPlace place = place(new SourceRange(source, start(line) + at[0], at[1]));
                if (sought.takes(place.kind()) || sought == SearchScope.CODES && isAnswered(place)) {
                    if (count > most) {
                        best.clear();
                    }
                    most = count;
                    best.add(place);
                }
            }
        }
        return best;
    }

    /** What a step does at a code. */
    private boolean isAnswered(FoundPlace place) {
        return place.line().contains("->") && parts.at(place.at().offset()).filter(part -> part.keyword().equals("observe")).isPresent();
    }

    /** The lines of each declaration and step with those of the comment before it. */
    private Map<Integer, List<Integer>> linesOfParts() {
        Map<Integer, List<Integer>> lines = new LinkedHashMap<>();
        int last = source.line(source.content().length());
        for (int line = 1; line <= last; line++) {
            String words = source.lineText(line);
            if (!words.isBlank()) {
                int offset = start(line) + words.length() - words.stripLeading().length();
                int part = parts.at(offset).or(() -> parts.after(offset)).map(Part::start).orElse(-1);
                lines.computeIfAbsent(part, start -> new ArrayList<>()).add(line);
            }
        }
        return lines;
    }

    private String heading(Map<Integer, List<Integer>> lines) {
        StringBuilder heading = new StringBuilder(WantedWords.plain(source.fileName()));
        lines.forEach((start, some) -> {
            if (start >= 0 && parts.at(start).filter(part -> HEADING.contains(part.kind())).isPresent()) {
                some.forEach(line -> heading.append('\n').append(WantedWords.plain(source.lineText(line))));
            }
        });
        return heading.toString();
    }

    private FoundPlace place(SourceRange at) {
        Optional<Part> part = parts.at(at.offset());
        if (parts.isComment(at.offset()) && at.length() > 0) {
            return new FoundPlace(ThingKind.COMMENT, false, part.map(Part::name).orElse(""), at);
        }
        ThingKind kind = part.map(Part::kind).orElse(ThingKind.WORDS);
        if (kind == ThingKind.PART && isNumber(at)) {
            kind = ThingKind.PART_NUMBER;
        } else if (kind == ThingKind.INDICATOR && MEANS.matcher(source.lineText(at.line())).find()) {
            kind = ThingKind.CODE;
        }
        return new FoundPlace(kind, false, part.map(Part::name).filter(name -> !name.startsWith("\"")).orElse(""), at);
    }

    private boolean isNumber(SourceRange at) {
        Matcher number = NUMBER.matcher(source.lineText(at.line()));
        int column = at.column() - 1;
        boolean inside = false;
        while (number.find()) {
            inside |= number.start() <= column && column < number.end();
        }
        return inside;
    }

    /** The offset of a line's first character. */
    private int start(int line) {
        return starts[line - 1];
    }

    private static int[] starts(String text) {
        List<Integer> found = new ArrayList<>(List.of(0));
        for (int at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) {
            found.add(at + 1);
        }
        return found.stream().mapToInt(Integer::intValue).toArray();
    }
}
