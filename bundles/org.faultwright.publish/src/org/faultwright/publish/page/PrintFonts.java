/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The one family that everything on paper is set in, in two weights. Its licence lies beside the files. */
public final class PrintFonts {
    static final String FAMILY = "Bench";
    private static final byte[] REGULAR = read("DejaVuSansCondensed.ttf");
    private static final byte[] BOLD = read("DejaVuSansCondensed-Bold.ttf");

    private PrintFonts() {
    }

    /** Read once: which characters the bold weight has, which are fewer than the regular one's, and its outlines. */
    private static final class Bold {
        static final TrueTypeFont FONT = parse(BOLD);
        static final CmapLookup LOOKUP = lookup(FONT);
    }

    private static final class Advances {
        private static final int KNOWN = 0x400;
        /** Of the em, by character; what is not known counts as a wide one. */
        static final float[] REGULAR_OF_EM = of(parse(REGULAR));
        static final float[] BOLD_OF_EM = of(Bold.FONT);

        private static float[] of(TrueTypeFont font) {
            try {
                CmapLookup lookup = lookup(font);
                float[] widths = new float[KNOWN];
                for (int c = 0; c < KNOWN; c++) {
                    widths[c] = (float) font.getAdvanceWidth(lookup.getGlyphId(c)) / font.getUnitsPerEm();
                }
                return widths;
            } catch (IOException damaged) {
                throw new UncheckedIOException(damaged);
            }
        }
    }

    /** How wide words are, as a multiple of the font's size. */
    public static double width(String words, boolean bold) {
        float[] widths = bold ? Advances.BOLD_OF_EM : Advances.REGULAR_OF_EM;
        double width = 0;
        for (int i = 0; i < words.length(); i++) {
            width += words.charAt(i) < widths.length ? widths[words.charAt(i)] : 1;
        }
        return width;
    }

    /** The file of a weight. @param bold or the regular one */
    static byte[] file(boolean bold) {
        return bold ? BOLD : REGULAR;
    }

    static TrueTypeFont bold() {
        return Bold.FONT;
    }

    /** The words with a stand-in for each character that cannot be printed. */
    static String printable(String words) {
        if (words.chars().allMatch(c -> c >= ' ' && c <= '~')) {
            return words;
        }
        StringBuilder printable = new StringBuilder(words.length());
        words.codePoints().forEach(c -> {
            if (Bold.LOOKUP.getGlyphId(c) > 0) {
                printable.appendCodePoint(c);
            } else {
                printable.append(PlainText.STAND_IN);
            }
        });
        return printable.toString();
    }

    private static TrueTypeFont parse(byte[] font) {
        try {
            return new TTFParser().parse(new RandomAccessReadBuffer(font));
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }

    private static CmapLookup lookup(TrueTypeFont font) {
        try {
            return font.getUnicodeCmapLookup();
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }

    private static byte[] read(String file) {
        try (InputStream in = PrintFonts.class.getResourceAsStream("/org/faultwright/publish/fonts/" + file)) {
            if (in == null) {
                throw new IllegalStateException("the font " + file + " is missing from the bundle");
            }
            return in.readAllBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
