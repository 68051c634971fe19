/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Rectangle;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.faultwright.publish.Hostile;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.plan.Placed;
import org.faultwright.publish.plan.Plan;
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
    void should_draw_every_step_once_with_its_number_on_the_card() throws Exception {
        Publication publication = Samples.everything();
        Plan plan = new Plan(publication);
        Document chart = chart(publication);
        Set<String> labels = plan.sections().stream().flatMap(section -> section.steps().stream()).map(Placed::label).collect(Collectors.toCollection(TreeSet::new));
        List<String> drawn = all(chart, "text").stream().filter(text -> text.getAttribute("text-anchor").equals("middle"))
                .map(Element::getTextContent).toList();
        assertEquals(labels, new TreeSet<>(drawn));
        assertEquals(labels.size(), drawn.size());
        assertEquals(labels.size(), boxes(chart).size());
    }

    @Test
    void should_lay_no_box_over_another_and_all_of_them_inside() throws Exception {
        Document chart = chart(Samples.everything());
        Rectangle paper = new Rectangle(number(chart.getDocumentElement(), "width"), number(chart.getDocumentElement(), "height"));
        List<Rectangle> boxes = boxes(chart);
        for (Rectangle box : boxes) {
            assertTrue(paper.contains(box), box.toString());
            assertEquals(1, boxes.stream().filter(box::intersects).count(), box.toString());
        }
    }

    /** A tree of n boxes has n − 1 lines; each routine is a tree of its own. */
    @Test
    void should_draw_one_line_to_every_step_but_the_first_ones() throws Exception {
        Publication publication = Samples.everything();
        Document chart = chart(publication);
        assertEquals(boxes(chart).size() - new Plan(publication).sections().size(), all(chart, "path").size());
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
        assertEquals(new TreeSet<>(Set.of("svg", "title", "desc", "rect", "text", "path", "polygon")), names);
        assertTrue(chart.getDocumentElement().getTextContent().contains("<script>alert(1)</script>"));
        assertFalse(Samples.string("chart-svg", Hostile.publication()).contains("<script"));
    }
}
