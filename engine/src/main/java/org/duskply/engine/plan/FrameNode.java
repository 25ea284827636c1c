package org.duskply.engine.plan;

import java.util.List;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.pixel.Region;

/**
 * A frame in linear working light: three planes, and its coverage as a fourth where it has one. At
 * a preview's scale {@code 1/n} a pixel is the mean over {@code n × n} pixels of the file.
 */
public final class FrameNode implements Node {
  private final String name;
  private final FrameSource source;
  private final Lineariser lineariser;
  private final int reduction;
  private final Region canvas;
  private final String contents;
  private final String reading;

  /**
   * A frame.
   *
   * @param name the recipe's name for it
   * @param source its file
   * @param lineariser from its samples to working light
   * @param reduction the {@code n} of a preview's scale {@code 1/n}; 1 for full size
   * @param contents stands for the samples of {@code source} in content keys
   * @param reading stands for the lineariser's settings in content keys
   */
  public FrameNode(
      String name,
      FrameSource source,
      Lineariser lineariser,
      int reduction,
      String contents,
      String reading) {
    this.name = name;
    this.source = source;
    this.lineariser = lineariser;
    this.reduction = reduction;
    this.contents = contents;
    this.reading = reading;
    this.canvas =
        Region.ofSize(
            (source.info().width() + reduction - 1) / reduction,
            (source.info().height() + reduction - 1) / reduction);
  }

  /** The recipe's name for it. */
  public String name() {
    return name;
  }

  /** Its file. */
  public FrameSource source() {
    return source;
  }

  /** Stands for the samples of its file: equal texts, equal samples. */
  public String contents() {
    return contents;
  }

  /** From its samples to working light. */
  public Lineariser lineariser() {
    return lineariser;
  }

  /** The {@code n} of a preview's scale {@code 1/n}. */
  public int reduction() {
    return reduction;
  }

  /** All its pixels, at the preview's scale. */
  public Region canvas() {
    return canvas;
  }

  /** The pixels of the file that make {@code out}. */
  public Region stored(Region out) {
    Region part = out.meet(canvas);
    return new Region(
            part.left() * reduction,
            part.top() * reduction,
            part.right() * reduction,
            part.bottom() * reduction)
        .meet(Region.ofSize(source.info().width(), source.info().height()));
  }

  @Override
  public List<Node> inputs() {
    return List.of();
  }

  @Override
  public int planes() {
    return lineariser.planes();
  }

  @Override
  public Region footprint(Region within) {
    return within.meet(canvas);
  }

  @Override
  public Region needs(int input, Region out) {
    throw new IndexOutOfBoundsException(input);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("frame").word(contents).word(reading).number(reduction);
  }
}
