/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import io.nayuki.qrcodegen.QrCode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import javax.imageio.ImageIO;
import org.faultwright.publish.FileName;
import org.faultwright.publish.Publication;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PrintDocument;

/** Which text a card was made from, as a square code (ISO/IEC 18004) of plain words: no address, nothing to open. */
final class CardCode {
    /** Modules of white that the standard asks for around a code. */
    private static final int QUIET = 4;

    /** Said beside it, so that nobody looks for something to read it with. */
    static final String PURPOSE = ". The square code says the same; the work does not need it.";

    private CardCode() {
    }

    static String words(Publication publication) {
        return FileName.of(publication.procedure(), "") + "\n" + publication.revision() + "\nSHA-256 " + publication.digest();
    }

    /** @param size of its side, in millimetres */
    static void add(Fo into, Publication publication, double size) {
        into.add("external-graphic", "src", "url('data:image/png;base64," + Base64.getEncoder().encodeToString(png(words(publication)))
                + "')", "content-width", PrintDocument.mm(size), "content-height", PrintDocument.mm(size), "scaling", "uniform")
                .spoken("Code with the name, the revision and the digest of this card");
    }

    private static byte[] png(String words) {
        QrCode code = QrCode.encodeText(words, QrCode.Ecc.MEDIUM);
        int side = code.size + 2 * QUIET;
        BufferedImage picture = new BufferedImage(side * 4, side * 4, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < side * 4; y++) {
            for (int x = 0; x < side * 4; x++) {
                picture.setRGB(x, y, code.getModule(x / 4 - QUIET, y / 4 - QUIET) ? 0 : 0xFFFFFF);
            }
        }
        try {
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(picture, "png", png);
            return png.toByteArray();
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
    }
}
