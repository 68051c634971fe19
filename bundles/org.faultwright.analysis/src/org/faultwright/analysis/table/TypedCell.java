/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityText;

/**
 * What somebody typed into a cell, as the language writes it. An outcome may be shortened as long as only one begins so.
 *
 * @param written what is to stand behind the name of the step; empty where the cell is to be cleared
 * @param refused why it cannot be written, a sentence
 */
record TypedCell(String written, Optional<String> refused) {
    private static final int LONGEST = 200;
    private static final int LONGEST_WORD = 60;
    /** Outside quotation marks. */
    private static final Pattern OR = Pattern.compile("\\s+or\\s+(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", Pattern.CASE_INSENSITIVE);
    private static final Pattern SHARE = Pattern.compile("(.*?)\\s+(\\d{1,3}(?:\\.\\d{1,3})?)\\s*%", Pattern.DOTALL);
    private static final Pattern NUMBER = Pattern.compile("[-\u2212]?[0-9].*|R[0-9]+");
    private static final Exact HUNDRED = Exact.of(100);
    private static final SourceRange NOWHERE = new SourceRange(new SourceText("", ""), 0, 0);

    /** An outcome as one would type it: in quotation marks only where the words would be read otherwise without. */
    static String plain(String words) {
        return OR.matcher(words).find() || SHARE.matcher(words).matches() || words.contains("\"") ? Quotation.of(words) : words;
    }

    /** @param declared the step as written, if it is @param outcomes what it can show; may be none as yet */
    static TypedCell of(String typed, String step, Optional<Step> declared, List<String> outcomes) {
        String text = typed.strip();
        if (text.isEmpty()) {
            return new TypedCell("", Optional.empty());
        }
        if (text.length() > LONGEST || text.chars().anyMatch(Character::isISOControl)) {
            return no("A cell holds one line of up to " + LONGEST + " characters.");
        }
        List<String> entries = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        List<Optional<Exact>> shares = new ArrayList<>();
        for (String one : OR.split(text, -1)) {
            Matcher share = SHARE.matcher(one.strip());
            boolean shared = share.matches();
            TypedCell word = word(shared ? share.group(1).strip() : one.strip(), step, declared, outcomes);
            if (word.refused().isPresent()) {
                return word;
            }
            if (!seen.add(word.written())) {
                return no("\"" + word.written().replace("\"", "") + "\" stands there twice; once is enough.");
            }
            shares.add(shared ? Optional.of(Exact.of(share.group(2))) : Optional.empty());
            entries.add(word.written() + (shared ? " " + share.group(2) + " %" : ""));
        }
        return wrongShares(shares).map(TypedCell::no).orElseGet(() -> new TypedCell(String.join(" or ", entries), Optional.empty()));
    }

    private static Optional<String> wrongShares(List<Optional<Exact>> shares) {
        Exact sum = shares.stream().flatMap(Optional::stream).reduce(Exact.ZERO, Exact::plus);
        if (shares.stream().allMatch(Optional::isEmpty)) {
            return Optional.empty();
        }
        boolean all = shares.stream().allMatch(Optional::isPresent);
        return all && sum.compareTo(HUNDRED) != 0 ? Optional.of("The shares come to " + sum + " % instead of 100 %; correct them, or leave one out.")
                : !all && sum.compareTo(HUNDRED) >= 0 ? Optional.of("The shares come to " + sum + " % and leave nothing for the rest; correct them.")
                : Optional.empty();
    }

    private static TypedCell word(String typed, String step, Optional<Step> declared, List<String> outcomes) {
        boolean quoted = typed.length() > 1 && typed.startsWith("\"") && typed.endsWith("\"");
        String word = quoted ? typed.substring(1, typed.length() - 1).replace("\\\"", "\"").replace("\\\\", "\\") : typed;
        if (word.isBlank()) {
            return no("An outcome is missing beside \"or\" or before a share.");
        }
        Optional<String> outcome = among(outcomes, word);
        if (outcome.isPresent()) {
            return yes(written(declared, outcome.get()));
        }
        if (declared.filter(one -> !one.outcomes().isEmpty()).isPresent()) {
            return reading(declared.get(), word).map(TypedCell::yes)
                    .orElseGet(() -> no('"' + step + "\" has no outcome \"" + word.replace('"', '\'') + "\"; it has " + String.join(", ", outcomes) + "."));
        }
        if (word.length() > LONGEST_WORD) {
            return no("An outcome has up to " + LONGEST_WORD + " characters.");
        }
        return yes(NUMBER.matcher(word).matches() && quantity(word).isPresent() ? word : ResultWords.written(word));
    }

    /** The same words; else whatever the capitals; else the only one that begins so. */
    private static Optional<String> among(List<String> outcomes, String word) {
        if (outcomes.contains(word)) {
            return Optional.of(word);
        }
        List<String> same = outcomes.stream().filter(word::equalsIgnoreCase).toList();
        String begin = word.toLowerCase(Locale.ROOT);
        List<String> begun = outcomes.stream().filter(outcome -> outcome.toLowerCase(Locale.ROOT).startsWith(begin)).toList();
        return same.size() == 1 ? Optional.of(same.get(0)) : begun.size() == 1 && quantity(word).isEmpty() ? Optional.of(begun.get(0))
                : Optional.empty();
    }

    private static String written(Optional<Step> declared, String outcome) {
        return declared.flatMap(step -> Results.byKey(step, outcome).map(found -> ResultWords.leadingTo(step, found)))
                .filter(words -> !words.isEmpty()).orElseGet(() -> ResultWords.written(outcome));
    }

    /** A reading that leads to one of the step's outcomes, or what a meter shows above its range. */
    private static Optional<String> reading(Step step, String word) {
        boolean overload = word.equals(Results.OVERLOAD);
        Optional<Quantity> quantity = overload ? Optional.empty() : quantity(word);
        if (!overload && quantity.isEmpty()) {
            return Optional.empty();
        }
        Showing.Possible shown = new Showing.Possible(new Name(word, NOWHERE), quantity, Optional.empty());
        return Results.outcome(step, shown).filter(outcome -> !(outcome.head() instanceof Outcome.AnythingElse)).map(outcome -> word);
    }

    private static Optional<Quantity> quantity(String word) {
        if (!NUMBER.matcher(word).matches()) {
            return Optional.empty();
        }
        QuantityText.Reading read = QuantityText.read(word);
        return read.problem().isEmpty() && read.quantity().unit().isKnown() ? Optional.of(read.quantity()) : Optional.empty();
    }

    /** The outcomes alone of what is written in a cell, without their shares. */
    static List<String> words(String written) {
        return written.isEmpty() ? List.of() : OR.splitAsStream(written).map(one -> {
            Matcher share = SHARE.matcher(one);
            return share.matches() ? share.group(1) : one;
        }).toList();
    }

    private static TypedCell yes(String written) {
        return new TypedCell(written, Optional.empty());
    }

    private static TypedCell no(String sentence) {
        return new TypedCell("", Optional.of(sentence));
    }
}
