/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.quantity.Quantity;

/**
 * A case with its readings and the conclusion it must reach.
 *
 * @param variation whether its words stand in another example, from which it differs in what they say
 * @param title  as written; else what it says in plain words, and its place is that of the word that it begins with
 * @param of     the fault it is a case of, where stated
 * @param shows  what each step shows; a step that comes round again takes its next entry
 * @param within the time it may take
 */
public record Example(boolean variation, Name title, Optional<Name> of, List<Showing> shows, Optional<Name> endsAt,
        Optional<Written<Quantity>> within, SourceRange at) {
    /** What it says in its own words; the rest follows from the example around it or from the fault table. */
    public List<Showing> written() {
        return Showing.written(shows);
    }

    /** Whether its title stands in its words. */
    public boolean isTitled() {
        return title.at().offset() != at.offset();
    }

    /** For a sentence: {@code "C7 dry"}, or {@code (C7 dry, but "OpenCharger" shows "stillCharged")} where it has no title of its own. */
    public String called() {
        return isTitled() ? "\"" + title + "\"" : "(" + title + ")";
    }

    /** Whether it says anything beside its title. */
    public boolean differs() {
        return of.isPresent() || !shows.isEmpty() || endsAt.isPresent() || within.isPresent();
    }

    /**
     * The same called by what it says.
     *
     * @param around the title of the example that it stands in
     * @param place  of the word that it begins with
     */
    public Example titledBy(String around, SourceRange place) {
        List<String> said = new ArrayList<>();
        of.ifPresent(fault -> said.add("a case of \"" + fault + "\""));
        Map<String, Integer> times = new LinkedHashMap<>();
        shows.forEach(showing -> times.merge("\"" + showing.step() + "\" shows " + showing.possible().stream()
                .map(possible -> "\"" + possible.words() + "\"").collect(Collectors.joining(" or ")), 1, Integer::sum));
        times.forEach((shown, count) -> said.add(count == 1 ? shown : shown + " " + count + " times"));
        endsAt.ifPresent(end -> said.add("ends at \"" + end + "\""));
        if (said.isEmpty()) {
            within.ifPresent(time -> said.add("within " + time.value()));
        }
        String words = String.join(", ", said);
        String called = variation ? (around.isBlank() ? "but " : around + ", but ") + words : words;
        String begun = called.isEmpty() ? called : called.substring(0, 1).toUpperCase(Locale.ROOT) + called.substring(1);
        return new Example(variation, new Name(variation && !around.isBlank() ? called : begun, place), of, shows, endsAt, within, at);
    }

    /** The end that stands in its words. */
    public Optional<Name> writtenEnd() {
        return endsAt.filter(end -> !end.isUnderstood());
    }
}
