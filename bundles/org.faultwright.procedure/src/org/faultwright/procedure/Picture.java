/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.stream.Stream;

/**
 * A picture beside the text.
 *
 * @param file  its name as written, in the folder of the text or one below it
 * @param shows what it shows, for whoever cannot see it; may be empty
 */
public record Picture(Written<String> file, String shows, SourceRange at) {
    /** Every picture that a file shows itself, beside points, parts, indicators and steps. */
    public static Stream<Picture> in(Document document) {
        Declarations own = document.own();
        Stream<List<Picture>> declared = Stream.of(own.points().stream().map(Point::pictures), own.parts().stream().map(Part::pictures),
                own.indicators().stream().map(Indicator::pictures)).flatMap(lists -> lists);
        Stream<List<Picture>> ofSteps = document.graphs().stream().flatMap(graph -> graph.steps().stream()).map(step -> step.frame().pictures());
        return Stream.concat(declared, ofSteps).flatMap(List::stream);
    }
}
