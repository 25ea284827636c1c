package org.duskply.engine.filter;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * The Gaussian of radius r, in pixels: σ = r/2.
 *
 * <p>Below σ = {@value #LARGE} each sample is weighted by its own distance ({@link
 * DirectGaussian}); from there on the same is done on means of cells ({@link CellGaussian}), and a
 * step comes out within 1e-3 of the true one. Which way is taken depends on σ alone.
 *
 * <p>Both ways: an even area keeps its very bits, and no result lies beyond the least and greatest
 * sample that it was made from. Values are functions of absolute coordinates, the same in any
 * output rectangle. Immutable; any number of threads may apply it.
 */
public final class Gaussian {
  /** The greatest radius, in pixels. */
  public static final double MAX_RADIUS = 4_000;

  private static final double LARGE = 16;

  /** One of the two ways. */
  interface Way {
    int reach();

    Region needs(Region out);

    long scratchBytes(Region out);

    void apply(Planes in, int plane, Planes out, int outPlane);
  }

  private final Way way;

  private Gaussian(Way way) {
    this.way = way;
  }

  /**
   * The Gaussian of a radius.
   *
   * @param radius twice σ, from 0 (which changes nothing) to {@link #MAX_RADIUS}
   */
  public static Gaussian of(double radius) {
    if (!(radius >= 0 && radius <= MAX_RADIUS)) {
      throw new IllegalArgumentException("radius " + radius);
    }
    double sigma = radius / 2;
    return new Gaussian(sigma < LARGE ? DirectGaussian.of(sigma) : CellGaussian.of(sigma));
  }

  /** The most pixels on any side that an output needs around it. */
  public int reach() {
    return way.reach();
  }

  /** The input that {@code out} is made from: within {@code out} grown by {@link #reach}. */
  public Region needs(Region out) {
    return out.empty() ? Region.EMPTY : way.needs(out);
  }

  /** Bytes that {@link #apply} takes beside its input and its result. */
  public long scratchBytes(Region out) {
    return out.empty() ? 0 : way.scratchBytes(out);
  }

  /**
   * Fills plane {@code outPlane} of {@code out}, all of it.
   *
   * @param in must hold what {@link #needs} says, continued beyond borders by the caller
   * @param plane which plane of it
   */
  public void apply(Planes in, int plane, Planes out, int outPlane) {
    Region needed = needs(out.area());
    if (!in.area().contains(needed)) {
      throw new IllegalArgumentException(in.area() + " does not hold " + needed);
    }
    if (!needed.empty()) {
      way.apply(in, plane, out, outPlane);
    }
  }
}
