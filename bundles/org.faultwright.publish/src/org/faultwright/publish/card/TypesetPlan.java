/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.io.IOException;
import java.lang.ref.SoftReference;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.faultwright.publish.Publication;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.page.PdfPrint;
import org.faultwright.publish.page.PdfStamp;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.LikelyFaults;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.ReadingWay;
import org.faultwright.publish.plan.StepRun;

/**
 * The plan that all forms of a publication have: arrangements are found by what their steps are reckoned to need, so the best of them is
 * set on A4 and its page turns are counted, and those on Letter where A4 is well. Where a likely repair then turns too often or the pages
 * are too many, the next ones are tried, and the one is taken that is best in print, A4 before Letter.
 */
public final class TypesetPlan {
    private static final int LIKELIEST = 3;
    private static final int MOST_TURNS = 4;
    private static final int MOST_PAGES = 6;
    private static final int MOST_TRIED = 16;
    /** With all well on A4, so many are tried for Letter: a card that is in hand waits for them. */
    private static final int MOST_FOR_LETTER = 8;
    /** What is kept whole moves what follows, so that another proof may be parted. */
    private static final int MOST_KEPT = 3;
    /** With more steps in print than that, no card keeps to so few pages, and a tree or a chart does not wait for one. */
    private static final int MOST_STEPS = 250;
    /** A turn too many counts as much as so many turns. */
    private static final double TOO_MANY = 10;

    private final CardPlan plan;
    private final double cost;
    /** Whether pages and turns are few enough, on A4 and on Letter. */
    private final boolean goodOnA4;
    private final boolean goodOnLetter;
    /** The card on both papers, the second where it was tried; may be forgotten when memory is short. */
    private final SoftReference<byte[]> printed;
    private final Optional<SoftReference<byte[]>> letter;

    /** As reckoned. */
    private TypesetPlan(CardPlan plan, boolean untried) {
        this.plan = plan;
        this.cost = 0;
        this.goodOnA4 = untried;
        this.goodOnLetter = untried;
        this.printed = new SoftReference<>(null);
        this.letter = Optional.empty();
    }

    private TypesetPlan(CardPlan plan) {
        this.plan = plan;
        PdfPrint.Printed pdf = printed(plan, Paper.A4, Set.of());
        this.printed = new SoftReference<>(pdf.bytes());
        List<LikelyFaults.Case> likeliest = plan.likely().cases().stream().limit(LIKELIEST).toList();
        List<Integer> turns = turns(plan, pdf);
        int beyond = beyond(turns, pdf);
        this.goodOnA4 = beyond == 0;
        // of a plan that will not be taken Letter is not set
        Optional<PdfPrint.Printed> other = goodOnA4 ? Optional.of(onOther(plan, Paper.LETTER)) : Optional.empty();
        this.letter = other.map(card -> new SoftReference<>(card.bytes()));
        int beyondOnLetter = other.map(card -> beyond(turns(plan, card), card)).orElse(0);
        this.goodOnLetter = goodOnA4 && beyondOnLetter == 0;
        double weighed = 0;
        for (int i = 0; i < turns.size(); i++) {
            weighed += likeliest.get(i).weight().doubleValue() * turns.get(i);
        }
        this.cost = pdf.count() + weighed + TOO_MANY * (beyond + beyondOnLetter);
    }

    /** The page turns of the likeliest repairs. */
    private static List<Integer> turns(CardPlan plan, PdfPrint.Printed pdf) {
        return plan.likely().cases().stream().limit(LIKELIEST).map(one -> turns(ReadingWay.of(plan, one), placed -> pdf.pages().get(placed.anchor()))).toList();
    }

    private static int beyond(List<Integer> turns, PdfPrint.Printed pdf) {
        return turns.stream().mapToInt(count -> Math.max(0, count - MOST_TURNS)).sum() + Math.max(0, pdf.count() - MOST_PAGES);
    }

    private boolean isBetterThan(TypesetPlan other) {
        return goodOnA4 == other.goodOnA4 ? cost < other.cost : goodOnA4;
    }

    public static CardPlan of(Publication publication) {
        return found(publication).plan;
    }

    /** The card of a publication. */
    static byte[] printed(Publication publication, Paper paper) {
        TypesetPlan found = found(publication);
        Optional<byte[]> kept = switch (paper) {
            case A4 -> Optional.ofNullable(found.printed.get());
            case LETTER -> found.letter.map(SoftReference::get);
            case A5, A4_ACROSS -> Optional.empty();
        };
        return kept.orElseGet(() -> print(found.plan, paper));
    }

    /** The pages of a plan on A4, to be looked at only. */
    static CardPages looked(CardPlan plan) throws IOException {
        return CardPages.of(PdfPrint.toLookAt(PaperCard.sheet(plan, Paper.A4, Set.of()), plan.publication().hasErrors()));
    }

    /** The pages of the card on A4: those that it was tried by, where they are still there. */
    static CardPages looked(Publication publication) throws IOException {
        TypesetPlan found = found(publication);
        byte[] printed = found.printed.get();
        return printed == null ? looked(found.plan) : CardPages.open(printed);
    }

    /** On other paper than A4, for which it was arranged, a proof that would go on over a page is kept whole. */
    private static PdfPrint.Printed onOther(CardPlan plan, Paper paper) {
        PdfPrint.Printed printed = printed(plan, paper, Set.of());
        Set<StepRun> whole = new HashSet<>();
        for (int tried = 0; tried < MOST_KEPT && paper != Paper.A4 && whole.addAll(parted(plan, printed)); tried++) {
            printed = printed(plan, paper, whole);
        }
        return printed;
    }

    static byte[] print(CardPlan plan, Paper paper) {
        return onOther(plan, paper).bytes();
    }

    /** The steps that prove something, such as that nothing is charged, where somebody would turn the page over them. */
    private static List<StepRun> parted(CardPlan plan, PdfPrint.Printed printed) {
        Map<StepRun, Set<Integer>> pages = new LinkedHashMap<>();
        plan.placed().filter(placed -> placed.run().proves() && printed.pages().containsKey(placed.anchor()))
                .forEach(placed -> pages.computeIfAbsent(placed.run(), none -> new HashSet<>()).add(printed.pages().get(placed.anchor())));
        return pages.keySet().stream().filter(run -> pages.get(run).size() > 1).toList();
    }

    private static PdfPrint.Printed printed(CardPlan plan, Paper paper, Set<StepRun> whole) {
        Publication publication = plan.publication();
        return PdfPrint.printed(PaperCard.sheet(plan, paper, whole), new PdfStamp(publication.digest(), publication.dated()), publication.hasErrors());
    }

    private static TypesetPlan found(Publication publication) {
        return publication.shared(TypesetPlan.class, TypesetPlan::find);
    }

    private static TypesetPlan find(Publication publication) {
        Iterator<CardPlan> plans = CardPlan.candidates(publication);
        CardPlan first = plans.next();
        if (first.placed().count() > MOST_STEPS) {
            return new TypesetPlan(first, true);
        }
        TypesetPlan best = new TypesetPlan(first);
        int forLetter = 0;
        for (int tried = 1; tried < MOST_TRIED && forLetter < MOST_FOR_LETTER && !best.goodOnLetter && plans.hasNext(); tried++) {
            forLetter += best.goodOnA4 ? 1 : 0;
            TypesetPlan other = new TypesetPlan(plans.next());
            best = other.isBetterThan(best) ? other : best;
        }
        return best;
    }

    /** How often the next place that is read stands on another page than the one before. @param page of a place */
    public static int turns(List<PlacedStep> way, ToIntFunction<PlacedStep> page) {
        int turns = 0;
        for (int i = 1; i < way.size(); i++) {
            turns += page.applyAsInt(way.get(i)) == page.applyAsInt(way.get(i - 1)) ? 0 : 1;
        }
        return turns;
    }
}
