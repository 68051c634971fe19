/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/**
 * What is kept of one text: what it was read with, and what was found.
 *
 * @param surroundings what must be as it was
 * @param days         the days on which the same is found; absent where nothing was held against a day
 * @param found        where in which text is told by the number of the text: 0 is the text itself
 */
record Entry(Surroundings surroundings, Optional<ValidDays> days, List<FoundThen> found) {
    /** Far more than any text has; a number that was not written by this class ends here and asks for no room. */
    private static final int MOST = 100_000;

    /** A finding, whose places still want their texts. */
    interface FoundThen {
        /** @throws IllegalArgumentException where a place lies in none of the texts */
        Finding in(List<SourceText> texts);
    }

    /** @throws IllegalArgumentException where a finding stands in a text that is none of these */
    static byte[] bytes(Surroundings surroundings, Optional<ValidDays> days, List<Finding> found, List<SourceText> texts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            surroundings.write(out);
            out.writeBoolean(days.isPresent());
            if (days.isPresent()) {
                out.writeLong(days.get().from().toEpochDay());
                out.writeLong(days.get().until().toEpochDay());
            }
            out.writeInt(found.size());
            for (Finding finding : found) {
                write(finding, texts, out);
            }
        } catch (IOException impossible) {
            throw new IllegalStateException("memory is always written", impossible);
        }
        return bytes.toByteArray();
    }

    /** @throws IOException where the bytes say something else */
    static Entry of(byte[] bytes) throws IOException {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            Surroundings surroundings = Surroundings.read(in);
            Optional<ValidDays> days = in.readBoolean()
                    ? Optional.of(new ValidDays(LocalDate.ofEpochDay(in.readLong()), LocalDate.ofEpochDay(in.readLong()))) : Optional.empty();
            int count = count(in);
            List<FoundThen> found = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                found.add(finding(in));
            }
            if (in.read() >= 0) {
                throw new IOException("more than was written");
            }
            return new Entry(surroundings, days, found);
        } catch (RuntimeException other) {
            throw new IOException("not what was written", other);
        }
    }

    private static void write(Finding finding, List<SourceText> texts, DataOutputStream out) throws IOException {
        write(finding.rule(), out);
        out.writeByte(finding.severity().ordinal());
        write(finding.at(), texts, out);
        write(finding.message(), out);
        write(finding.advice(), out);
        out.writeInt(finding.path().size());
        for (PathStep step : finding.path()) {
            write(step.step(), out);
            write(step.outcome(), out);
            write(step.at(), texts, out);
        }
        out.writeInt(finding.fixes().size());
        for (Fix fix : finding.fixes()) {
            write(fix.title(), out);
            out.writeInt(fix.edits().size());
            for (Fix.Edit edit : fix.edits()) {
                write(edit.at(), texts, out);
                write(edit.replacement(), out);
            }
        }
    }

    private static FoundThen finding(DataInputStream in) throws IOException {
        String rule = string(in);
        Severity severity = Severity.values()[in.readUnsignedByte()];
        Place at = place(in);
        String message = string(in);
        String advice = string(in);
        record StepThen(String step, String outcome, Place at) {
        }
        record EditThen(Place at, String replacement) {
        }
        record FixThen(String title, List<EditThen> edits) {
        }
        List<StepThen> path = new ArrayList<>();
        for (int left = count(in); left > 0; left--) {
            path.add(new StepThen(string(in), string(in), place(in)));
        }
        List<FixThen> fixes = new ArrayList<>();
        for (int left = count(in); left > 0; left--) {
            FixThen fix = new FixThen(string(in), new ArrayList<>());
            for (int edits = count(in); edits > 0; edits--) {
                fix.edits().add(new EditThen(place(in), string(in)));
            }
            fixes.add(fix);
        }
        return texts -> new Finding(rule, severity, at.in(texts), message, advice,
                path.stream().map(step -> new PathStep(step.step(), step.outcome(), step.at().in(texts))).toList(),
                fixes.stream().map(fix -> new Fix(fix.title(),
                        fix.edits().stream().map(edit -> new Fix.Edit(edit.at().in(texts), edit.replacement())).toList())).toList());
    }

    private record Place(int text, int offset, int length) {
        SourceRange in(List<SourceText> texts) {
            if (text < 0 || text >= texts.size() || offset < 0 || length < 0 || offset > texts.get(text).content().length() - length) {
                throw new IllegalArgumentException("no place in these texts");
            }
            return new SourceRange(texts.get(text), offset, length);
        }
    }

    private static void write(SourceRange at, List<SourceText> texts, DataOutputStream out) throws IOException {
        out.writeInt(numberOf(at.source(), texts));
        out.writeInt(at.offset());
        out.writeInt(at.length());
    }

    /** By name and by what it says, so that no place is told in another text. */
    private static int numberOf(SourceText source, List<SourceText> texts) {
        for (int i = 0; i < texts.size(); i++) {
            if (texts.get(i) == source || texts.get(i).name().equals(source.name()) && texts.get(i).content().equals(source.content())) {
                return i;
            }
        }
        throw new IllegalArgumentException("a finding stands in " + source.name() + ", which the text was not read with");
    }

    private static Place place(DataInputStream in) throws IOException {
        return new Place(in.readInt(), in.readInt(), in.readInt());
    }

    static void write(String words, DataOutputStream out) throws IOException {
        byte[] bytes = words.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    static String string(DataInputStream in) throws IOException {
        int length = in.readInt();
        if (length < 0 || length > in.available()) {
            throw new IOException("not what was written");
        }
        return new String(in.readNBytes(length), StandardCharsets.UTF_8);
    }

    static int count(DataInputStream in) throws IOException {
        int count = in.readInt();
        if (count < 0 || count > MOST) {
            throw new IOException("not what was written");
        }
        return count;
    }
}
