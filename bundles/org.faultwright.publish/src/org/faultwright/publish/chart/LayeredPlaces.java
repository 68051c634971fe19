/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.eclipse.elk.alg.layered.LayeredLayoutProvider;
import org.eclipse.elk.alg.layered.options.CycleBreakingStrategy;
import org.eclipse.elk.alg.layered.options.LayeredMetaDataProvider;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.alg.layered.options.NodePlacementStrategy;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.math.ElkPadding;
import org.eclipse.elk.core.options.CoreOptions;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.options.PortConstraints;
import org.eclipse.elk.core.options.PortSide;
import org.eclipse.elk.core.util.BasicProgressMonitor;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkEdgeSection;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.ElkPort;
import org.eclipse.elk.graph.util.ElkGraphUtil;

/** Places for boxes in layers from top to bottom, and the corners of the arrows between them, found by the Eclipse Layout Kernel. */
final class LayeredPlaces {
    /** From a result to a step, by their keys. */
    record Link(String from, int cell, String to, boolean otherwise) {
    }

    /** What looks for few crossings throws dice; always the same ones. */
    private static final int SEED = 1;
    /** How often it throws. */
    private static final int TRIES = 3;
    /** Up to here boxes are pulled together as far as they go, which takes long for many. */
    private static final int FEW_BOXES = 60;
    private static final double BETWEEN_LAYERS = 26;
    private static final double BETWEEN_BOXES = 18;
    private static final double BETWEEN_ARROWS = 8;
    /** How far beside the middle of its cell the second way of a bounded repetition begins. */
    private static final int BESIDE = 12;

    static {
        // outside OSGi nobody else does it
        LayoutMetaDataService.getInstance().registerLayoutMetaDataProviders(new LayeredMetaDataProvider());
    }

    private LayeredPlaces() {
    }

    /** @throws CancellationException once that is asked for */
    static Chart of(List<ChartBox> boxes, List<Link> links, BooleanSupplier cancelled) {
        ElkNode root = ElkGraphUtil.createGraph();
        options(root, boxes.size() <= FEW_BOXES ? NodePlacementStrategy.NETWORK_SIMPLEX : NodePlacementStrategy.BRANDES_KOEPF);
        Map<String, ElkNode> nodes = new HashMap<>();
        Map<String, ElkPort> above = new HashMap<>();
        for (ChartBox box : boxes) {
            ElkNode node = ElkGraphUtil.createNode(root);
            node.setDimensions(box.width(), box.height());
            node.setProperty(CoreOptions.PORT_CONSTRAINTS, PortConstraints.FIXED_POS);
            nodes.put(box.key(), node);
            above.put(box.key(), port(node, PortSide.NORTH, box.width() / 2, 0));
        }
        Map<String, ChartBox> byKey = new HashMap<>();
        boxes.forEach(box -> byKey.put(box.key(), box));
        List<ElkEdge> edges = new ArrayList<>();
        // A way back to its own step goes round on the side that crosses less. Where both are alike, the library takes the side that the virtual machine's number of an
        // enumeration puts first, another one each time; a port without an arrow counts a third of one with an arrow, so one on the left sends it round on the right.
        Set<String> looped = new HashSet<>();
        for (Link link : links) {
            ChartBox box = byKey.get(link.from());
            ChartBox.Cell cell = box.cells().get(link.cell());
            int x = cell.x() + cell.width() / 2 + (link.otherwise() ? BESIDE : 0);
            ElkPort from = port(nodes.get(link.from()), PortSide.SOUTH, x, box.height());
            edges.add(ElkGraphUtil.createSimpleEdge(from, above.get(link.to())));
            if (link.from().equals(link.to()) && looped.add(link.from())) {
                port(nodes.get(link.from()), PortSide.WEST, 0, box.height() / 2);
            }
        }
        new LayeredLayoutProvider().layout(root, new BasicProgressMonitor() {
            @Override
            public boolean isCanceled() {
                return cancelled.getAsBoolean();
            }
        });
        if (cancelled.getAsBoolean()) {
            throw new CancellationException();
        }
        List<ChartBox> placed = boxes.stream().map(box -> box.at(round(nodes.get(box.key()).getX()), round(nodes.get(box.key()).getY()))).toList();
        List<ChartArrow> arrows = new ArrayList<>();
        for (int i = 0; i < links.size(); i++) {
            Link link = links.get(i);
            arrows.add(new ChartArrow(link.from(), link.cell(), link.to(), link.otherwise(), points(edges.get(i))));
        }
        return new Chart(round(root.getWidth()), round(root.getHeight()), List.of(), placed, List.copyOf(arrows));
    }

    private static void options(ElkNode root, NodePlacementStrategy placement) {
        root.setProperty(LayeredOptions.NODE_PLACEMENT_STRATEGY, placement);
        root.setProperty(CoreOptions.DIRECTION, Direction.DOWN);
        root.setProperty(CoreOptions.EDGE_ROUTING, EdgeRouting.ORTHOGONAL);
        root.setProperty(CoreOptions.RANDOM_SEED, SEED);
        root.setProperty(CoreOptions.PADDING, new ElkPadding(0));
        root.setProperty(CoreOptions.SPACING_NODE_NODE, BETWEEN_BOXES);
        root.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, BETWEEN_LAYERS);
        root.setProperty(LayeredOptions.SPACING_EDGE_NODE_BETWEEN_LAYERS, BETWEEN_LAYERS / 2);
        root.setProperty(LayeredOptions.SPACING_EDGE_EDGE_BETWEEN_LAYERS, BETWEEN_ARROWS);
        root.setProperty(CoreOptions.SPACING_EDGE_EDGE, BETWEEN_ARROWS);
        root.setProperty(CoreOptions.SPACING_EDGE_NODE, BETWEEN_ARROWS + 4);
        root.setProperty(LayeredOptions.THOROUGHNESS, TRIES);
        root.setProperty(LayeredOptions.CYCLE_BREAKING_STRATEGY, CycleBreakingStrategy.DEPTH_FIRST);
    }

    private static ElkPort port(ElkNode node, PortSide side, int x, int y) {
        ElkPort port = ElkGraphUtil.createPort(node);
        port.setProperty(CoreOptions.PORT_SIDE, side);
        port.setLocation(x, y);
        return port;
    }

    private static List<ChartArrow.Point> points(ElkEdge edge) {
        List<ChartArrow.Point> points = new ArrayList<>();
        ElkEdgeSection section = edge.getSections().get(0);
        points.add(new ChartArrow.Point(round(section.getStartX()), round(section.getStartY())));
        section.getBendPoints().forEach(bend -> points.add(new ChartArrow.Point(round(bend.getX()), round(bend.getY()))));
        points.add(new ChartArrow.Point(round(section.getEndX()), round(section.getEndY())));
        return List.copyOf(points);
    }

    private static int round(double place) {
        return (int) Math.round(place);
    }
}
