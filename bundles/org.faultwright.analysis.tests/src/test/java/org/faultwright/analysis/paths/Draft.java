/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Precautions;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Quantity;

/** Procedures made at random, small enough to try every path of. */
final class Draft {
    private static final SourceRange HERE = new SourceRange(new SourceText("Draft.procedure", ""), 0, 0);

    private final Random random;
    private final boolean bounded;
    private final List<Condition> conditions = new ArrayList<>();
    private final List<Routine> routines = new ArrayList<>();

    private Draft(Random random, boolean bounded) {
        this.random = random;
        this.bounded = bounded;
    }

    /**
     * @param bounded  whether every arrow back has a bound, so that no path goes on for ever
     * @param routines how many routines there may be, later ones performing earlier ones
     */
    static Procedure at(long seed, boolean bounded, int routines) {
        Draft draft = new Draft(new Random(seed), bounded);
        draft.conditions();
        for (int i = 0; i < routines; i++) {
            List<Name> exits = List.of(name("done"), name("not"));
            draft.routines.add(new Routine(name("Routine" + i), "", exits, Optional.empty(), Optional.empty(), Optional.empty(),
                    draft.steps("r", 1 + draft.random.nextInt(3), exits), HERE));
        }
        List<Step> steps = draft.steps("s", 2 + draft.random.nextInt(routines > 0 ? 3 : 5), List.of());
        return new Procedure(HERE.source(), name("Draft"), "", List.of(), List.of(), Optional.empty(), Optional.empty(),
                List.of(), List.of(), new Declarations(draft.conditions, List.of(), List.of(), List.of(), List.of(), List.of(),
                        List.of(), draft.routines, Optional.empty()), Optional.empty(), Optional.empty(), Optional.empty(), List.of(), Optional.empty(), steps, List.of(),
                List.of(), HERE);
    }

    static Name name(String text) {
        return new Name(text, HERE);
    }

    private void conditions() {
        int count = random.nextInt(4);
        for (int i = 0; i < count; i++) {
            List<Name> values = new ArrayList<>();
            for (int v = 0; v < 2 + random.nextInt(2); v++) {
                values.add(name("v" + v));
            }
            List<Condition.Becomes> becomes = new ArrayList<>();
            if (i > 0 && random.nextInt(3) == 0) {
                becomes.add(new Condition.Becomes(any(values), setting(conditions.get(random.nextInt(i))), HERE));
            }
            conditions.add(new Condition(name("C" + i), "", values, List.of(), List.of(), becomes, Optional.empty(), false,
                    random.nextBoolean() ? Optional.of(any(values)) : Optional.empty(), Optional.empty(), HERE));
        }
    }

    private <T> T any(List<T> among) {
        return among.get(random.nextInt(among.size()));
    }

    private Setting setting(Condition condition) {
        return new Setting(condition.name(), any(condition.values()), HERE);
    }

    private List<Setting> settings(int oneIn) {
        return conditions.stream().filter(condition -> random.nextInt(oneIn) == 0).map(this::setting).toList();
    }

    private List<Step> steps(String prefix, int count, List<Name> exits) {
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            steps.add(step(prefix, i, count, exits));
        }
        if (exits.isEmpty()) {
            steps.add(new Step.Conclude(name(prefix + count), "", List.of(), Optional.of(HERE), Optional.empty(),
                    Optional.empty(), frame(), HERE));
        }
        return steps;
    }

    private StepFrame frame() {
        return new StepFrame(settings(5), List.of(), settings(3), List.of(), List.of(),
                Optional.of(new Written<>(Quantity.of("" + random.nextInt(9), "min"), HERE)), List.of(), List.of(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
                Precautions.NONE);
    }

    private Step step(String prefix, int number, int count, List<Name> exits) {
        Name own = name(prefix + number);
        if (!routines.isEmpty() && random.nextInt(3) == 0) {
            List<Outcome> outcomes = Arrays.asList("done", "not").stream()
                    .filter(exit -> random.nextInt(6) > 0).map(exit -> outcome(exit, prefix, number, count, exits)).toList();
            StepFrame frame = frame();
            StepFrame untimed = new StepFrame(frame.needs(), frame.setUps(), frame.sets(), List.of(), List.of(), Optional.empty(),
                    List.of(), List.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
                Precautions.NONE);
            return new Step.Perform(own, "", Optional.of(any(routines).name()), random.nextBoolean() ? frame : untimed,
                    outcomes, HERE);
        }
        List<Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(2); i++) {
            outcomes.add(outcome("o" + i, prefix, number, count, exits));
        }
        return new Step.Check(own, "", frame(), outcomes, HERE);
    }

    private Outcome outcome(String key, String prefix, int number, int count, List<Name> exits) {
        int to = random.nextInt(10) < 6 ? number + 1 + random.nextInt(2) : random.nextInt(count + 1);
        Optional<Name> target = random.nextInt(30) == 0 ? Optional.empty() : Optional.of(named(prefix, to, count, exits));
        boolean back = to <= number;
        Optional<Outcome.Repeat> repeat = back && bounded || random.nextInt(6) == 0
                ? Optional.of(new Outcome.Repeat(random.nextInt(3),
                        named(prefix, number + 1 + random.nextInt(2), count, exits), HERE)) : Optional.empty();
        return new Outcome(new Outcome.Word(name(key)), target, repeat, settings(6), HERE);
    }

    /** A step from 0 to count - 1; past them the conclusion or one of the exits. */
    private Name named(String prefix, int number, int count, List<Name> exits) {
        if (number < count) {
            return name(prefix + number);
        }
        return exits.isEmpty() ? name(prefix + count) : any(exits);
    }
}
