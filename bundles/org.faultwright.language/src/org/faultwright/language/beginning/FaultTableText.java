/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The faults of a procedure from a table with a row for each; the steps are drafted afterwards. */
final class FaultTableText {
    private static final Set<String> OWN = Set.of("fault", "cases", "remedy");

    private final Table table;
    private final Names names = new Names();
    private final Map<String, String> remedies = new LinkedHashMap<>();

    private FaultTableText(Table table) {
        this.table = table;
    }

    static String text(String name, Table table) throws UnusableTable {
        return new FaultTableText(table).text(name);
    }

    private String text(String name) throws UnusableTable {
        int fault = table.needed("fault");
        names.name(name, "X");
        Map<Integer, String> steps = new LinkedHashMap<>();
        for (int i = 0; i < table.headings().size(); i++) {
            if (OWN.stream().noneMatch(table.headings().get(i)::equalsIgnoreCase)) {
                steps.put(i, names.name(table.headings().get(i), "Step"));
            }
        }
        if (steps.isEmpty()) {
            throw new UnusableTable("The table has no column for a step; add one for each look or measurement, with what "
                    + "each fault shows there.");
        }
        StringBuilder faults = new StringBuilder();
        for (Table.Row row : table.rows()) {
            faults.append(fault(row, fault, steps));
        }
        return CodeTable.head(name) + """
                // What could it be? "cases" is how often you have met it, "shows" what each step would show.
                %s
                // The steps. Say of each what to do or to ask in its title, how long it takes, what it needs.
                %s""".formatted(faults, Stream.concat(steps.entrySet().stream().map(step -> asked(step.getKey(), step.getValue())),
                        remedies.entrySet().stream().map(remedy -> "do " + remedy.getValue() + " " + Names.quoted(remedy.getKey())
                                + " {\n    takes 5 min\n}\n")).collect(Collectors.joining()));
    }

    private String asked(int column, String step) {
        return "check " + step + " " + Names.quoted(table.headings().get(column)) + " {\n    takes 1 min\n}\n";
    }

    private String fault(Table.Row row, int title, Map<Integer, String> steps) throws UnusableTable {
        if (row.cell(title).isEmpty()) {
            throw new UnusableTable("Line " + row.line() + " names no fault; fill in the cell or take the line out.");
        }
        StringBuilder text = new StringBuilder("fault " + names.name(row.cell(title), "Fault") + " " + Names.quoted(row.cell(title))
                + " {\n    cases " + cases(row) + "\n");
        List<String> shown = new ArrayList<>();
        steps.forEach((column, step) -> {
            if (!row.cell(column).isEmpty()) {
                shown.add(step + " " + possible(row.cell(column)));
            }
        });
        if (shown.isEmpty()) {
            throw new UnusableTable("Line " + row.line() + " does not say what any step shows; fill in a cell.");
        }
        text.append("    shows ").append(String.join(", ", shown)).append('\n');
        remedy(row).ifPresent(remedy -> text.append("    remedy ").append(remedy).append('\n'));
        return text.append("}\n").toString();
    }

    /** {@code dark or dim} stays two possible answers. */
    private static String possible(String cell) {
        return Stream.of(cell.split("(?i)\\s+or\\s+")).map(Names::outcome).distinct().collect(Collectors.joining(" or "));
    }

    private String cases(Table.Row row) throws UnusableTable {
        int column = table.column("cases");
        String cell = column < 0 || row.cell(column).isEmpty() ? "1" : row.cell(column);
        if (!cell.matches("\\d{1,9}(\\.\\d{1,3})?") || cell.matches("[0.]+")) {
            throw new UnusableTable("Line " + row.line() + " has \"" + cell + "\" under \"cases\"; write a number above 0.");
        }
        return cell;
    }

    private java.util.Optional<String> remedy(Table.Row row) {
        int column = table.column("remedy");
        return column < 0 || row.cell(column).isEmpty() ? java.util.Optional.empty()
                : java.util.Optional.of(remedies.computeIfAbsent(row.cell(column), words -> names.name(words, "Do")));
    }
}
