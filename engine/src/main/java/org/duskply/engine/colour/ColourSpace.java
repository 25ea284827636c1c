package org.duskply.engine.colour;

import java.util.Arrays;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * An RGB or grey encoding: three primaries, a white, and a curve a channel. Either one of the five
 * named spaces with its published numbers, or the numbers of an embedded profile. A profile of
 * look-up tables, RGB or CMYK, is linear BT.2020 behind its {@linkplain #tables tables}.
 *
 * <p>A grey space has no primaries of its own. It stands in those of BT.2020, where equal parts are
 * neutral, and has the {@linkplain #samePrimaries same primaries} as any other space.
 *
 * <p>Immutable; every array handed out is a copy.
 */
public final class ColourSpace {
  private final String name;
  private final @Nullable NamedSpace named;
  private final boolean grey;
  private final double[] toXyz;
  private final double[] white;
  private final TransferCurve[] curves;
  private final @Nullable LookUpTables tables;

  private ColourSpace(
      String name,
      @Nullable NamedSpace named,
      boolean grey,
      double[] toXyz,
      double[] white,
      @Nullable LookUpTables tables,
      TransferCurve... curves) {
    this.name = name;
    this.named = named;
    this.grey = grey;
    this.toXyz = toXyz.clone();
    this.white = white.clone();
    this.tables = tables;
    this.curves = curves.clone();
  }

  /** The named space, always the same object. */
  public static ColourSpace of(NamedSpace name) {
    return NamedNumbers.space(name);
  }

  static ColourSpace named(NamedSpace name, double[] toXyz, double[] white, TransferCurve curve) {
    return new ColourSpace(name.key(), name, false, toXyz, white, null, curve, curve, curve);
  }

  /**
   * A space with numbers of its own.
   *
   * @param toXyz linear RGB to XYZ, not singular, its middle row summing to 1; the sum of the
   *     columns is the white
   * @param curves of red, green and blue
   */
  static ColourSpace own(double[] toXyz, TransferCurve... curves) {
    double[] white = Matrix3.apply(toXyz, 1, 1, 1);
    return new ColourSpace("embedded profile", null, false, toXyz, white, null, curves);
  }

  /** A grey space with this curve. */
  static ColourSpace grey(TransferCurve curve) {
    ColourSpace wide = of(NamedSpace.REC2020);
    return new ColourSpace(
        "embedded grey profile", null, true, wide.toXyz, wide.white, null, curve, curve, curve);
  }

  /** A space whose values go through tables, which give linear light in BT.2020. */
  static ColourSpace tables(LookUpTables tables) {
    ColourSpace wide = of(NamedSpace.REC2020);
    TransferCurve curve = TransferCurve.identity();
    return new ColourSpace(
        "embedded profile of look-up tables",
        null,
        false,
        wide.toXyz,
        wide.white,
        tables,
        curve,
        curve,
        curve);
  }

  /** The space of the same primaries whose values are linear light. */
  public ColourSpace linear() {
    TransferCurve curve = TransferCurve.identity();
    if (curves[0] == curve && curves[1] == curve && curves[2] == curve) {
      return this;
    }
    return new ColourSpace("linear " + name, null, grey, toXyz, white, null, curve, curve, curve);
  }

  /** The name as a recipe writes it, or words that say it has none. */
  public String name() {
    return name;
  }

  /** Which named space this is, if it is one. */
  public @Nullable NamedSpace named() {
    return named;
  }

  /** Whether files in this space hold one grey channel. */
  public boolean grey() {
    return grey;
  }

  /**
   * What stored values must go through first, if anything: it gives linear values of this space,
   * and its {@linkplain #curve curves} are then straight.
   */
  public @Nullable LookUpTables tables() {
    return tables;
  }

  /** Linear RGB to XYZ in the space's own white, Y of white = 1; nine numbers row by row. */
  public double[] toXyz() {
    return toXyz.clone();
  }

  /** XYZ of red = green = blue = 1; Y is 1. */
  public double[] white() {
    return white.clone();
  }

  /**
   * The curve of a channel.
   *
   * @param channel 0, 1 or 2; a grey space answers the same for each
   */
  public TransferCurve curve(int channel) {
    return curves[channel];
  }

  /** How much of Y each linear channel gives: three numbers that sum to 1. */
  public double[] luminance() {
    return Arrays.copyOfRange(toXyz, 3, 6);
  }

  /** Whether linear values mean the same in both, so that no matrix is due between them. */
  public boolean samePrimaries(ColourSpace o) {
    return grey || o.grey || Arrays.equals(toXyz, o.toXyz);
  }

  /**
   * The matrix from linear values of one space to linear values of the other, Bradford-adapted
   * where the whites differ: nine numbers row by row, exactly the identity where the spaces have
   * the {@linkplain #samePrimaries same primaries}.
   */
  public static double[] matrix(ColourSpace from, ColourSpace to) {
    if (from.samePrimaries(to)) {
      return Matrix3.identity();
    }
    double[] adapted = Matrix3.multiply(Bradford.between(from.white, to.white), from.toXyz);
    return Matrix3.multiply(Matrix3.inverse(to.toXyz), adapted);
  }

  /**
   * What tells it from every other space with the same curves: content keys stand on it, and spaces
   * of embedded profiles share one name. A file's own curves are told by the file.
   */
  @Override
  public String toString() {
    return named != null ? name : name + " " + Arrays.toString(toXyz);
  }
}
