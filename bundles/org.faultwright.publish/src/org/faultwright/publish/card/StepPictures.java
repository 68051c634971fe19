/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.ProbePoints;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Picture;
import org.faultwright.procedure.PictureFile;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.publish.page.Tag;

/** The pictures of a step and of what it touches, each with its words. */
final class StepPictures {
    private StepPictures() {
    }

    /** Its own first, then those of its points, its indicator and its parts; each once. */
    static List<Picture> of(Step step, Scope scope) {
        Stream<Picture> probed = step instanceof Step.Measure measure
                ? ProbePoints.points(measure, scope).stream().map(Point::pictures).flatMap(List::stream) : Stream.empty();
        Stream<Picture> watched = step instanceof Step.Observe observe ? observe.indicator().flatMap(scope::indicator).stream()
                .map(Indicator::pictures).flatMap(List::stream) : Stream.empty();
        Stream<Picture> handled = step.frame().handles().stream().map(scope::part).flatMap(Optional::stream).map(Part::pictures)
                .flatMap(List::stream);
        return Stream.of(step.frame().pictures().stream(), probed, watched, handled).flatMap(all -> all).distinct().toList();
    }

    /** With its words below it; what cannot be shown is told in words alone. */
    static void add(Tag box, Picture picture) {
        PictureFile file = PictureFile.of(picture);
        String words = picture.shows().isBlank() ? picture.file().value() : picture.shows();
        if (file.problem().isEmpty()) {
            Tag figure = box.add("p", "picture");
            figure.picture(file.asAddress(), words);
            figure.space().text(words);
        } else {
            StepPart.line(box, "Picture", words + " (cannot be shown: " + picture.file().value() + " " + file.problem().get() + ")");
        }
    }
}
