/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.language.text.PictureText;
import org.faultwright.language.text.TextPackage;
import org.faultwright.procedure.Picture;

/** Pictures by their names; what is in the files is no matter of reading a text. */
final class PictureReader {
    private final ModelSource passage;

    PictureReader(ModelSource passage) {
        this.passage = passage;
    }

    List<Picture> all(List<PictureText> written) {
        return written.stream().flatMap(this::picture).toList();
    }

    Stream<Picture> picture(PictureText written) {
        return Optional.ofNullable(written).flatMap(text -> passage.node(text, TextPackage.Literals.PICTURE_TEXT__FILE)).map(passage::text)
                .map(file -> new Picture(file, passage.textOrNone(written, TextPackage.Literals.PICTURE_TEXT__SHOWS),
                        passage.range(written))).stream();
    }
}
