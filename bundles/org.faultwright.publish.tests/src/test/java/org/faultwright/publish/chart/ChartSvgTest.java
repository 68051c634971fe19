/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.awt.Rectangle;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Hostile;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Rectangle;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Hostile;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class ChartSvgTest {
    private static Document chart(Publication publication) throws Exception {
        byte[] svg = Samples.publish("chart-svg", publication).bytes();
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(svg));
    }

    private static List<Element> all(Document chart, String name) {
        NodeList found = chart.getElementsByTagName(name);
        return IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i)).toList();
    }

    private static List<Rectangle> boxes(Document chart) {
        return all(chart, "rect").stream().filter(rect -> rect.hasAttribute("stroke"))
                .map(rect -> new Rectangle(number(rect, "x"), number(rect, "y"), number(rect, "width"), number(rect, "height")))
                .toList();
    }

    private static int number(Element element, String attribute) {
        return Integer.parseInt(element.getAttribute(attribute));
    }

    @Test
    void should_draw_every_step_with_its_number_on_the_card() throws Exception {
        Publication publication = Samples.everything();
        CardPlan plan = TypesetPlan.of(publication);
        Document chart = chart(publication);
        Set<String> labels = plan.sections().stream().flatMap(section -> section.steps().stream())
                .flatMap(step -> Stream.concat(Stream.of(step), plan.inside(step).stream())).map(PlacedStep::label).collect(Collectors.toCollection(TreeSet::new));
        List<String> drawn = all(chart, "text").stream().filter(text -> text.getAttribute("class").equals("number"))
                .map(Element::getTextContent).toList();
        assertTrue(new TreeSet<>(drawn).containsAll(plan.sections().stream().flatMap(section -> section.steps().stream()).map(PlacedStep::label).toList()));
        assertTrue(labels.containsAll(drawn), drawn + " of " + labels);
        assertEquals(drawn.size(), boxes(chart).size());
    }

    @Test
    void should_keep_all_boxes_on_the_paper() throws Exception {
        Document chart = chart(Samples.everything());
        Rectangle paper = new Rectangle(number(chart.getDocumentElement(), "width"), number(chart.getDocumentElement(), "height"));
        for (Rectangle box : boxes(chart)) {
            assertTrue(paper.contains(box), box.toString());
        }
    }

    @Test
    void should_give_the_same_bytes_every_time() {
        for (Path demo : Samples.demos()) {
            assertEquals(Samples.string("chart-svg", Samples.demo(demo)), Samples.string("chart-svg", Samples.demo(demo)));
        }
    }

    @Test
    void should_say_the_whole_caution_in_sight() throws Exception {
        for (Path demo : Samples.demos()) {
            String words = all(chart(Samples.demo(demo)), "text").stream().map(Element::getTextContent).collect(Collectors.joining(" "));
            assertTrue(words.contains(Caution.SENTENCES), "whole and in sight: " + demo.getFileName());
        }
    }

    @Test
    void should_draw_a_long_chain() throws Exception {
        StringBuilder text = new StringBuilder("procedure Chain");
        int steps = 3000;
        for (int i = 0; i < steps; i++) {
            text.append(" do S").append(i).append(" \"Do it\" { then -> S").append(i + 1).append(" }");
        }
        Publication chain = Samples.text(text + " conclude S3000 \"End\" { finds nothing }");
        assertEquals(steps + 1, boxes(chart(chain)).size());
    }

    @Test
    void should_show_hostile_words_as_words() throws Exception {
        Document chart = chart(Hostile.publication());
        Set<String> names = new TreeSet<>();
        NodeList elements = chart.getElementsByTagName("*");
        for (int i = 0; i < elements.getLength(); i++) {
            names.add(((Element) elements.item(i)).getTagName());
        }
        assertEquals(new TreeSet<>(Set.of("svg", "title", "desc", "rect", "text", "path", "polygon", "line")), names);
        assertTrue(chart.getDocumentElement().getTextContent().contains("<script>alert(1)</script>"));
        assertFalse(Samples.string("chart-svg", Hostile.publication()).contains("<script"));
    }
}
