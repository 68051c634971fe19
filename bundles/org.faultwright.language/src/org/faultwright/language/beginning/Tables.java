/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.beginning.Interview.Meter;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;

/** Reads the lines of tables; the columns are named by the parts of {@link TableKind}. */
public final class Tables {
    private static final Pattern TIME = Pattern.compile("(\\d{1,4}(?:[.,]\\d{1,2})?)\\s*(min|minutes?|s|sec|seconds?|h)?\\.?");
    private static final Pattern ACCURACY = Pattern.compile("[\u00b1+\\-/ ]*\\(?\\s*([\\d.]+)\\s*%\\s*(?:of reading|of rdg|rdg|reading)?\\s*\\+\\s*([\\d.]+)\\s*(?:digits?|dgts?|counts?|d|lsd)?\\s*\\)?",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern PERCENT = Pattern.compile("[\u00b1+\\-/ ]*([\\d.]+)\\s*%(?:\\s*(?:of reading|of rdg|rdg|reading))?", Pattern.CASE_INSENSITIVE);
    /** What data sheets call the quantities. */
    private static final Map<String, String> QUANTITIES = Map.ofEntries(Map.entry("dcv", "dc voltage"), Map.entry("vdc", "dc voltage"),
            Map.entry("dcvoltage", "dc voltage"), Map.entry("voltagedc", "dc voltage"), Map.entry("acv", "ac voltage"), Map.entry("vac", "ac voltage"),
            Map.entry("acvoltage", "ac voltage"), Map.entry("voltageac", "ac voltage"), Map.entry("dca", "dc current"), Map.entry("adc", "dc current"),
            Map.entry("dccurrent", "dc current"), Map.entry("currentdc", "dc current"), Map.entry("aca", "ac current"), Map.entry("aac", "ac current"),
            Map.entry("accurrent", "ac current"), Map.entry("currentac", "ac current"), Map.entry("ohms", "resistance"), Map.entry("ohm", "resistance"),
            Map.entry("\u03a9", "resistance"), Map.entry("cap", "capacitance"), Map.entry("freq", "frequency"), Map.entry("hz", "frequency"));

    private Tables() {
    }

    public static ImportedLines<ImportedLines.Code> codes(HeadedTable table, Map<String, Integer> columns) throws UnusableTable {
        Set<String> seen = new HashSet<>();
        boolean countsBlinks = table.headings().get(columns.getOrDefault("code", 0)).strip().matches("(?i)(number of )?(blinks|flashes)");
        return ImportedLines.of(TableKind.CODES, table, columns, row -> {
            String cell = cell(row, columns, "code");
            String shown = code(countsBlinks && cell.matches("\\d{1,9}") ? cell + (cell.equals("1") ? " blink" : " blinks") : cell, row.line());
            String meaning = cell(row, columns, "meaning");
            if (meaning.isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " does not say what " + shown + " means; fill in the cell.");
            }
            if (!seen.add(shown)) {
                throw new UnusableTable("Line " + row.line() + " has the code " + shown + " for a second time; keep one of them.");
            }
            return new ImportedLines.Code(shown, meaning);
        });
    }

    /** A code as the language writes it. @param line of the table, for the sentence */
    static String code(String cell, long line) throws UnusableTable {
        if (cell.isEmpty()) {
            throw new UnusableTable("Line " + line + " has no code; fill in the cell or take the line out.");
        }
        if (cell.equalsIgnoreCase("none") || cell.equalsIgnoreCase("anything else")) {
            throw new UnusableTable("Line " + line + " has the code \"" + cell + "\", which every step that reads an indicator has "
                    + "anyway; take the line out.");
        }
        boolean plain = cell.matches("\\d{1,9} [A-Za-z]+") && NamesFromWords.isFree(cell.replaceFirst("\\d+ ", ""))
                || cell.matches("[A-Za-z][A-Za-z0-9]*") && NamesFromWords.isFree(cell);
        return plain ? cell : NamesFromWords.quoted(cell);
    }

    /** A code as the language writes it; absent where there is none, or one that every indicator has anyway. */
    public static Optional<String> code(String words) {
        try {
            return Optional.of(code(words.strip(), 0));
        } catch (UnusableTable none) {
            return Optional.empty();
        }
    }

    /** The lines of a list of steps; a step that expects something is a measurement, and what it expects is a limit. */
    public static ImportedLines<ImportedLines.StepLine> steps(HeadedTable table, Map<String, Integer> columns, Meter meter) throws UnusableTable {
        return steps(table, columns, words -> LimitWords.quantity(words, meter.ranges()));
    }

    /** Which columns of a fault table are steps: those that hold nothing else. */
    static Map<Integer, String> signs(HeadedTable table, Map<String, Integer> columns) {
        Map<Integer, String> steps = new LinkedHashMap<>();
        for (int i = 0; i < table.headings().size(); i++) {
            if (!columns.containsValue(i)) {
                steps.put(i, table.headings().get(i));
            }
        }
        return steps;
    }

    public static ImportedLines<ImportedLines.FaultLine> faults(HeadedTable table, Map<String, Integer> columns) throws UnusableTable {
        Map<Integer, String> steps = signs(table, columns);
        return ImportedLines.of(TableKind.FAULTS, table, columns, row -> {
            String fault = cell(row, columns, "fault");
            if (fault.isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " names no fault; fill in the cell or take the line out.");
            }
            Map<String, String> shows = new LinkedHashMap<>();
            steps.forEach((column, heading) -> Optional.of(row.cell(column)).filter(cell -> !cell.isEmpty()).ifPresent(cell -> shows.put(heading, cell)));
            if (shows.isEmpty() && !steps.isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " does not say what any step shows; fill in a cell.");
            }
            String cases = cell(row, columns, "cases");
            if (!isCount(cases)) {
                throw new UnusableTable("Line " + row.line() + " has \"" + cases + "\" under \"cases\"; write a number above 0.");
            }
            return new ImportedLines.FaultLine(fault, cases.isEmpty() ? "1" : cases, cell(row, columns, "remedy"), shows);
        });
    }

    /** Whether it can be how often a fault was met; empty counts as once. */
    public static boolean isCount(String cell) {
        return cell.isEmpty() || cell.matches("\\d{1,9}(\\.\\d{1,3})?") && !cell.matches("[0.]+");
    }

    private static ImportedLines<ImportedLines.StepLine> steps(HeadedTable table, Map<String, Integer> columns, Function<String, Optional<String>> quantity) throws UnusableTable {
        return ImportedLines.of(TableKind.STEPS, table, columns, row -> {
            String step = cell(row, columns, "step");
            if (step.isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " names no step; fill in the cell or take the line out.");
            }
            String time = cell(row, columns, "time");
            Optional<String> minutes = minutes(time);
            if (!time.isEmpty() && minutes.isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " has the time \"" + time + "\"; write minutes, such as 2 or 30 s.");
            }
            String expects = cell(row, columns, "expects");
            Optional<String> measured = expects.isEmpty() ? Optional.empty() : quantity.apply(expects);
            if (!expects.isEmpty() && measured.isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " expects \"" + expects + "\", which is no limit; write one such as 24 V +/- 5 % or 12 ohm .. 15 ohm.");
            }
            String kind = cell(row, columns, "kind").toLowerCase(Locale.ROOT);
            ImportedLines.StepKind known = !expects.isEmpty() ? ImportedLines.StepKind.MEASURE
                    : kind.matches("(do|repair|act|replace|fit|remedy).*") ? ImportedLines.StepKind.DO : ImportedLines.StepKind.CHECK;
            return new ImportedLines.StepLine(step, known, minutes.orElse(""), expects, measured.orElse(""), cell(row, columns, "at"));
        });
    }

    /** Minutes, from a cell such as {@code 2}, {@code 2 min} or {@code 30 s}; absent where it is no time. */
    public static Optional<String> minutes(String cell) {
        Matcher time = TIME.matcher(cell.strip().toLowerCase(Locale.ROOT));
        if (!time.matches()) {
            return Optional.empty();
        }
        double count = Double.parseDouble(time.group(1).replace(',', '.'));
        String unit = time.group(2) == null ? "min" : time.group(2);
        double minutes = unit.startsWith("s") ? count / 60 : unit.equals("h") ? count * 60 : count;
        return Optional.of(java.math.BigDecimal.valueOf(minutes).setScale(2, java.math.RoundingMode.HALF_UP).stripTrailingZeros().toPlainString())
                .filter(words -> !words.equals("0"));
    }

    public static ImportedLines<ImportedLines.Range> ranges(HeadedTable table, Map<String, Integer> columns) throws UnusableTable {
        return ImportedLines.of(TableKind.RANGES, table, columns, row -> {
            String quantity = cell(row, columns, "quantity");
            if (quantity.isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " names no quantity; fill in the cell or take the line out.");
            }
            StringBuilder line = new StringBuilder(QUANTITIES.getOrDefault(quantity.toLowerCase(Locale.ROOT).replaceAll("[\\s.\\-]", ""),
                    quantity.toLowerCase(Locale.ROOT)));
            part(line, "from", value(cell(row, columns, "from")));
            part(line, "up to", value(cell(row, columns, "up to")));
            part(line, "resolution", value(cell(row, columns, "resolution")));
            part(line, "accuracy", accuracy(value(cell(row, columns, "accuracy"))));
            part(line, "input", value(cell(row, columns, "input")));
            Optional<String> problem = problem(line.toString());
            if (problem.isPresent()) {
                throw new UnusableTable("Line " + row.line() + " is no range of an instrument: " + problem.get());
            }
            return new ImportedLines.Range(line.toString());
        });
    }

    private static void part(StringBuilder line, String word, String value) {
        if (!value.isEmpty()) {
            line.append(' ').append(word).append(' ').append(value);
        }
    }

    /** With a decimal point, and units as the language spells them. */
    static String value(String cell) {
        return cell.replaceAll("(?<=\\d),(?=\\d)", ".").replace("\u03a9", "ohm").replace("\u2126", "ohm").replace('\u00b5', 'u').replace('\u03bc', 'u')
                .replaceAll("(?<=\\d)(?=[A-Za-z])", " ").replaceAll("\\s+", " ").strip();
    }

    private static String accuracy(String cell) {
        Matcher digits = ACCURACY.matcher(cell);
        if (digits.matches()) {
            return digits.group(1) + " % of reading + " + digits.group(2) + " digits";
        }
        Matcher percent = PERCENT.matcher(cell);
        return percent.matches() ? percent.group(1) + " % of reading" : cell.replaceFirst("^[\u00b1]\\s*", "");
    }

    /** Why a line is no range, in the words of the check; absent where it is one. */
    private static Optional<String> problem(String line) {
        if (line.matches("(?s).*[\\r\\n{}\"].*")) {
            return Optional.of("it has signs in it that no range has.");
        }
        String text = "library Try \"Try\"\n\ninstrument Meter \"Meter\" {\n" + line + "\n}\n";
        Document read = new ProcedureReader((library, fromFile) -> Optional.empty()).read(new SourceText("Try.procedure", text));
        return read.problems().stream().map(one -> one.message()).findFirst().or(() -> new Checker().check(read).stream()
                .filter(finding -> finding.severity() == Severity.ERROR).map(Finding::message).findFirst())
                .or(() -> read.own().instruments().stream().allMatch(one -> one.ranges().size() == 1) ? Optional.empty() : Optional.of("it is not one range."));
    }

    private static String cell(HeadedTable.Row row, Map<String, Integer> columns, String part) {
        return row.cell(columns.getOrDefault(part, -1));
    }
}
