package org.duskply.engine.render;

import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;

/**
 * A picture that is wanted.
 *
 * @param root the node
 * @param canvas its pixels, all of which are made
 * @param sink where its bands go
 */
public record Output(Node root, Region canvas, BandSink sink) {}
