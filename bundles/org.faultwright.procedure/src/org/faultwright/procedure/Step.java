/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.quantity.Formula;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** One step. Its kinds are sealed: {@link Cases} shows every place that must answer for a new one. */
public sealed interface Step extends Declaration {
    /** The words that a step can begin with, one for each kind, in the order in which they are told of. */
    List<String> KEYWORDS = List.of("check", "observe", "measure", "do", "calculate", "perform", "conclude");

    /** The result words of a measurement that states what it expects. */
    String BELOW = "below";
    String WITHIN = "within";
    String ABOVE = "above";
    String OUTSIDE = "outside";
    /** The results of a table of readings. */
    String ALL_WITHIN = "all within";
    String ANY_OUTSIDE = "any outside";
    /** The result of a reading too near a limit for the instrument to decide. */
    String DOUBTFUL = "doubtful";
    /** The result of a {@code do} that has only one, and of a measurement that is only recorded. */
    String DONE = "done";

    StepFrame frame();

    List<Outcome> outcomes();

    /**
     * Whether it stands nowhere in the text and follows from the rest of it: the step that closes the unit, and the conclusion that an arrow to a
     * fault leads to. Then it has a place, of no length; its name stands where what it follows from has it.
     */
    default boolean isUnderstood() {
        return at().length() == 0 && name().at().length() > 0;
    }

    <R> R match(Cases<R> cases);

    /** The word of the language that a step of this kind begins with; one of {@link #KEYWORDS}. */
    String keyword();

    /** How a step of this kind comes to its result. */
    Answer answer();

    /** Whether it is a question with results to choose from, and nothing that is only done. */
    default boolean asks() {
        return answer() != Answer.NONE;
    }

    /** The same step under another name, with other outcomes; one that ends a procedure stays as it is. */
    Step renamed(Name name, List<Outcome> outcomes);

    /** The same step that says something else of what every kind of step can say. */
    Step framed(StepFrame frame);

    /** What steps of this kind alone refer to, beside what every step can and what stands in a formula. */
    List<Mention> mentions();

    /** The question, instruction or conclusion in the author's words. */
    @Override
    String title();

    /** How a result is come to. */
    enum Answer {
        /** By looking, listening or asking. */
        SEEN,
        /** On an instrument. */
        READ,
        /** From earlier readings. */
        COMPUTED,
        /** Nothing is asked. */
        NONE;

        /** Whether the unit itself is looked at for it. */
        public boolean isFromTheUnit() {
            return this == SEEN || this == READ;
        }
    }

    /** A name in a step, and what kind of thing is meant by it. */
    record Mention(Referent thing, Name name) {
        private static Stream<Mention> of(Referent thing, Optional<Name> name) {
            return name.stream().map(one -> new Mention(thing, one));
        }
    }

    /** What a step can refer to besides other steps. */
    enum Referent {
        INDICATOR, POINT, INSTRUMENT, ROUTINE, FAULT
    }

    /** One answer for each kind of step. */
    interface Cases<R> {
        R check(Check step);

        R observe(Observe step);

        R measure(Measure step);

        R carryOut(Do step);

        R calculate(Calculate step);

        R perform(Perform step);

        R conclude(Conclude step);
    }

    /** A question answered by looking, listening or asking. */
    record Check(Name name, String title, StepFrame frame, List<Outcome> outcomes, SourceRange at) implements Step {
        @Override
        public <R> R match(Cases<R> cases) {
            return cases.check(this);
        }

        @Override
        public String keyword() {
            return "check";
        }

        @Override
        public Answer answer() {
            return Answer.SEEN;
        }

        @Override
        public Step renamed(Name newName, List<Outcome> newOutcomes) {
            return new Check(newName, title, frame, newOutcomes, at);
        }

        @Override
        public Step framed(StepFrame newFrame) {
            return new Check(name, title, newFrame, outcomes, at);
        }

        @Override
        public List<Mention> mentions() {
            return List.of();
        }
    }

    /** A code or an appearance. @param indicator whose codes are read; absent for an appearance */
    record Observe(Name name, String title, Optional<Name> indicator, StepFrame frame, List<Outcome> outcomes,
            SourceRange at) implements Step {
        @Override
        public <R> R match(Cases<R> cases) {
            return cases.observe(this);
        }

        @Override
        public String keyword() {
            return "observe";
        }

        @Override
        public Answer answer() {
            return Answer.SEEN;
        }

        @Override
        public Step renamed(Name newName, List<Outcome> newOutcomes) {
            return new Observe(newName, title, indicator, frame, newOutcomes, at);
        }

        @Override
        public Step framed(StepFrame newFrame) {
            return new Observe(name, title, indicator, newFrame, outcomes, at);
        }

        @Override
        public List<Mention> mentions() {
            return Mention.of(Referent.INDICATOR, indicator).toList();
        }
    }

    /** What a measurement or computed value should be. */
    record Expectation(Written<Limit> limit, Optional<Source> source) {
    }

    /**
     * A share of the uncertainty that the instrument does not state, such as probe contact.
     *
     * @param halfWidth the half-width of its interval, taken as rectangular (JCGM 100, 4.3.7)
     */
    record Contribution(Written<Quantity> halfWidth, String of) {
    }

    /** One reading of a table. */
    record Row(Name point, Written<Limit> limit, SourceRange at) {
        /** The result that this reading alone is outside its limit. */
        public String outside() {
            return "at " + point + " " + OUTSIDE;
        }
    }

    /**
     * A quantity read from an instrument.
     *
     * @param kind      absent in a broken text
     * @param through   whether a current flows through the meter or its clamp there, and is not read across the point
     * @param against   the second point; absent means the point's own reference
     * @param range     the range the author named, by its upper end
     * @param sensor    for temperatures the sensor, such as {@code K} or {@code Pt100}
     * @param unitDeviation the standard deviation of good units, where known, for risks after JCGM 106
     * @param rows      several readings, each at its point with its limit; then neither point nor expectation is stated
     */
    record Measure(Name name, String title, Optional<Written<QuantityKind>> kind, Optional<Name> point,
            boolean through, Optional<Name> against, Optional<Name> instrument, Optional<Written<Quantity>> range,
            Optional<Written<String>> sensor, Optional<Expectation> expects, List<Contribution> uncertainties,
            Optional<Written<Quantity>> unitDeviation, List<Row> rows, StepFrame frame, List<Outcome> outcomes, SourceRange at)
            implements Step {
        /**
         * Each reading as a measurement of its own, with the results within and outside; this one where it has no table.
         * What holds for one reading is asked of these.
         */
        public List<Measure> readings() {
            return rows.isEmpty() ? List.of(this) : rows.stream().map(this::reading).toList();
        }

        private Measure reading(Row row) {
            return new Measure(name, title, kind, Optional.of(row.point()), through, against, instrument, range, sensor,
                    Optional.of(new Expectation(row.limit(), frame.source())), uncertainties, unitDeviation, List.of(), frame,
                    outcomes.stream().flatMap(outcome -> of(row, outcome).stream()).toList(), at);
        }

        private static Optional<Outcome> of(Row row, Outcome outcome) {
            String key = outcome.key();
            if (key.equals(ALL_WITHIN)) {
                return Optional.of(outcome.named(WITHIN));
            }
            boolean outside = key.equals(ANY_OUTSIDE) || key.equals(row.outside());
            return outside ? Optional.of(outcome.named(OUTSIDE)) : key.startsWith("at ") ? Optional.empty() : Optional.of(outcome);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.measure(this);
        }

        @Override
        public String keyword() {
            return "measure";
        }

        @Override
        public Answer answer() {
            return Answer.READ;
        }

        @Override
        public Step renamed(Name newName, List<Outcome> newOutcomes) {
            return new Measure(newName, title, kind, point, through, against, instrument, range, sensor, expects, uncertainties, unitDeviation, rows, frame,
                    newOutcomes, at);
        }

        @Override
        public Step framed(StepFrame newFrame) {
            return new Measure(name, title, kind, point, through, against, instrument, range, sensor, expects, uncertainties, unitDeviation, rows, newFrame,
                    outcomes, at);
        }

        @Override
        public List<Mention> mentions() {
            return Stream.of(Mention.of(Referent.POINT, point), rows.stream().map(row -> new Mention(Referent.POINT, row.point())),
                    Mention.of(Referent.POINT, against), Mention.of(Referent.INSTRUMENT, instrument)).flatMap(some -> some).toList();
        }
    }

    /**
     * A setting with a unit.
     *
     * @param kind of what quantity; absent in a broken text
     * @param of   what is set, in the author's words
     * @param to   the value with its tolerance; absent in a broken text
     */
    record Adjustment(Optional<Written<QuantityKind>> kind, String of, Optional<Written<Limit>> to, SourceRange at) {
    }

    /**
     * Something done.
     *
     * @param erases  the data it erases, in the author's words
     * @param repairs where it says that it repairs; a fault's remedy repairs without saying so
     * @param adjusts what is set to a value, such as the torque of screws or a current limit
     */
    record Do(Name name, String title, Optional<Written<String>> erases, Optional<SourceRange> repairs, List<Adjustment> adjusts,
            StepFrame frame, List<Outcome> outcomes, SourceRange at) implements Step {
        @Override
        public <R> R match(Cases<R> cases) {
            return cases.carryOut(this);
        }

        @Override
        public String keyword() {
            return "do";
        }

        @Override
        public Answer answer() {
            return Answer.NONE;
        }

        @Override
        public Step renamed(Name newName, List<Outcome> newOutcomes) {
            return new Do(newName, title, erases, repairs, adjusts, frame, newOutcomes, at);
        }

        @Override
        public Step framed(StepFrame newFrame) {
            return new Do(name, title, erases, repairs, adjusts, newFrame, outcomes, at);
        }

        @Override
        public List<Mention> mentions() {
            return List.of();
        }
    }

    /** A value computed from earlier readings. */
    record Calculate(Name name, String title, Optional<Written<Formula>> formula, Optional<Expectation> expects,
            StepFrame frame, List<Outcome> outcomes, SourceRange at) implements Step {
        @Override
        public <R> R match(Cases<R> cases) {
            return cases.calculate(this);
        }

        @Override
        public String keyword() {
            return "calculate";
        }

        @Override
        public Answer answer() {
            return Answer.COMPUTED;
        }

        @Override
        public Step renamed(Name newName, List<Outcome> newOutcomes) {
            return new Calculate(newName, title, formula, expects, frame, newOutcomes, at);
        }

        @Override
        public Step framed(StepFrame newFrame) {
            return new Calculate(name, title, formula, expects, newFrame, outcomes, at);
        }

        @Override
        public List<Mention> mentions() {
            return List.of();
        }
    }

    /** A shared routine; its exits are this step's outcomes. */
    record Perform(Name name, String title, Optional<Name> routine, StepFrame frame, List<Outcome> outcomes,
            SourceRange at) implements Step {
        /** The routine that it follows for having its name, without saying so; with the place where it would be said. */
        public Optional<Name> namesake() {
            return routine.filter(Name::isUnderstood);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.perform(this);
        }

        @Override
        public String keyword() {
            return "perform";
        }

        @Override
        public Answer answer() {
            return Answer.NONE;
        }

        @Override
        public Step renamed(Name newName, List<Outcome> newOutcomes) {
            return new Perform(newName, title, routine, frame, newOutcomes, at);
        }

        @Override
        public Step framed(StepFrame newFrame) {
            return new Perform(name, title, routine, newFrame, outcomes, at);
        }

        @Override
        public List<Mention> mentions() {
            return Mention.of(Referent.ROUTINE, routine).toList();
        }
    }

    /**
     * Where a procedure ends; it has no outcomes.
     *
     * @param finds        the faults it names
     * @param findsNothing where it says that no fault was found
     * @param refersTo     whom the unit is handed on to
     * @param report       the sentence for the customer
     */
    record Conclude(Name name, String title, List<Name> finds, Optional<SourceRange> findsNothing,
            Optional<Written<String>> refersTo, Optional<Written<String>> report, StepFrame frame, SourceRange at)
            implements Step {
        @Override
        public List<Outcome> outcomes() {
            return List.of();
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.conclude(this);
        }

        @Override
        public String keyword() {
            return "conclude";
        }

        @Override
        public Answer answer() {
            return Answer.NONE;
        }

        @Override
        public Step renamed(Name newName, List<Outcome> newOutcomes) {
            return this;
        }

        @Override
        public Step framed(StepFrame newFrame) {
            return new Conclude(name, title, finds, findsNothing, refersTo, report, newFrame, at);
        }

        @Override
        public List<Mention> mentions() {
            return finds.stream().map(name -> new Mention(Referent.FAULT, name)).toList();
        }
    }
}
