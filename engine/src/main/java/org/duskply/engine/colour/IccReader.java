package org.duskply.engine.colour;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Set;
import org.duskply.engine.colour.IccException.Reason;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * Reads ICC profiles of versions 2 to 4 that describe RGB by primaries and tone curves, grey by one
 * tone curve, or RGB or CMYK by look-up tables (ICC.1:2010, clauses 8.3 to 8.5). Where a profile
 * holds primaries and tables, the primaries and curves are used.
 *
 * <p>A profile whose numbers are those of a {@linkplain NamedMatch named space} is that space.
 * Otherwise its own numbers count. They stand under D50, to which profiles adapt everything; where
 * the profile holds a Bradford adaptation (tag {@code chad}) they are taken back to the white they
 * came from, so that luminance has the weights of that white.
 *
 * <p>Profiles come from strangers: sizes, counts and offsets are checked before use, and the limits
 * have names.
 */
public final class IccReader {
  /** Bytes of the longest profile that is read. */
  public static final int MAX_BYTES = 32 << 20;

  /** The most entries of a profile's tag table. */
  public static final int MAX_TAGS = 1024;

  /** The most samples of a tone curve. */
  public static final int MAX_CURVE_SAMPLES = 1 << 16;

  private static final Set<String> PICTURE_CLASSES = Set.of("scnr", "mntr", "prtr", "spac");

  /** How far a stored adaptation may be from Bradford's: files round it to three digits. */
  private static final double BRADFORD_ROUNDING = 0.002;

  /** Cone responses of a believable white lie between this and its inverse. */
  private static final double LEAST_CONE = 0.25;

  /** Below this determinant the primaries lie on a line; that of sRGB is 0.2. */
  private static final double LEAST_DETERMINANT = 1e-4;

  private IccReader() {}

  /**
   * The colour space that a profile describes.
   *
   * @param profile all its bytes; more may follow its end
   * @throws IccException if it is not one of these, is damaged, or passes a limit
   */
  public static ColourSpace read(byte[] profile) {
    IccTags tags = IccTags.of(profile);
    checkVersionAndClass(tags);
    return switch (tags.headerSignature(16)) {
      case "RGB " -> rgb(tags);
      case "GRAY" -> grey(tags);
      case "CMYK" -> ColourSpace.tables(IccTables.read(tags, 4));
      case "Lab " -> throw otherModel("Lab");
      case "XYZ " -> throw otherModel("XYZ");
      default -> throw otherModel("another colour model");
    };
  }

  private static void checkVersionAndClass(IccTags tags) {
    int version = tags.majorVersion();
    if (version < 2 || version > 4) {
      throw new IccException(
          Reason.OTHER_KIND,
          "The colour profile is of version " + version + "; versions 2 to 4 are read.");
    }
    if (!PICTURE_CLASSES.contains(tags.headerSignature(12))) {
      throw new IccException(
          Reason.OTHER_KIND,
          "The colour profile does not describe a picture's colours: it is a link, an effect or a"
              + " list of named colours.");
    }
  }

  private static IccException otherModel(String model) {
    return new IccException(
        Reason.OTHER_KIND, "The colour profile describes " + model + ", not RGB or grey.");
  }

  private static ColourSpace grey(IccTags tags) {
    checkConnection(tags);
    return ColourSpace.grey(IccCurves.read(tags, "kTRC"));
  }

  private static ColourSpace rgb(IccTags tags) {
    boolean primaries = tags.headerSignature(20).equals("XYZ ") && tags.has("rXYZ");
    if (!primaries && IccTables.there(tags)) {
      return ColourSpace.tables(IccTables.read(tags, 3));
    }
    checkConnection(tags);
    double[] columns = columns(tags);
    TransferCurve[] curves = curves(tags);
    NamedSpace named = NamedMatch.find(columns, curves);
    return named != null ? ColourSpace.of(named) : own(tags, columns, curves);
  }

  /** Primaries and curves lead to XYZ. */
  private static void checkConnection(IccTags tags) {
    if (!tags.headerSignature(20).equals("XYZ ")) {
      throw new IccException(
          Reason.OTHER_KIND,
          "The colour profile works by curves that lead to no amounts of light.");
    }
  }

  private static double[] columns(IccTags tags) {
    double[] columns = new double[9];
    String[] names = {"rXYZ", "gXYZ", "bXYZ"};
    for (int channel = 0; channel < 3; channel++) {
      ByteBuffer bytes = tags.need(names[channel], 20);
      if (!IccTags.signature(bytes, 0).equals("XYZ ")) {
        throw IccTags.damaged(names[channel], "is not a colour");
      }
      for (int row = 0; row < 3; row++) {
        columns[3 * row + channel] = IccTags.fixed(bytes, 8 + 4 * row);
      }
    }
    return columns;
  }

  /** Curves that share their bytes share the object. */
  private static TransferCurve[] curves(IccTags tags) {
    TransferCurve red = IccCurves.read(tags, "rTRC");
    TransferCurve green = shared(tags, "gTRC", red);
    return new TransferCurve[] {red, green, shared(tags, "bTRC", red)};
  }

  private static TransferCurve shared(IccTags tags, String tag, TransferCurve red) {
    return tags.offset(tag) == tags.offset("rTRC") ? red : IccCurves.read(tags, tag);
  }

  private static ColourSpace own(IccTags tags, double[] columns, TransferCurve... curves) {
    double[] adaptation = Bradford.between(White.profileConnection(), ownWhite(tags));
    double[] toXyz = Matrix3.multiply(adaptation, columns);
    double[] white = Matrix3.apply(toXyz, 1, 1, 1);
    double[] scaled = new double[9];
    for (int i = 0; i < 9; i++) {
      scaled[i] = toXyz[i] / white[1];
    }
    if (!(white[1] > 0)
        || !believable(Matrix3.apply(scaled, 1, 1, 1))
        || StrictMath.abs(Matrix3.determinant(scaled)) < LEAST_DETERMINANT) {
      throw new IccException(
          Reason.DAMAGED, "The colour profile is damaged: its primaries cannot make white.");
    }
    return ColourSpace.own(scaled, curves);
  }

  /** The white before adaptation if the profile holds a Bradford matrix that tells, else D50. */
  private static double[] ownWhite(IccTags tags) {
    double[] stored = White.profileConnection();
    double[] adaptation = adaptation(tags);
    if (adaptation == null || StrictMath.abs(Matrix3.determinant(adaptation)) < 0.01) {
      return stored;
    }
    double[] white = Matrix3.apply(Matrix3.inverse(adaptation), stored);
    double[] scaled = {white[0] / white[1], 1, white[2] / white[1]};
    if (!(white[1] > 0) || !believable(scaled)) {
      return stored;
    }
    double[] bradford = Bradford.between(scaled, stored);
    for (int i = 0; i < 9; i++) {
      if (StrictMath.abs(bradford[i] - adaptation[i]) > BRADFORD_ROUNDING) {
        return stored;
      }
    }
    return scaled;
  }

  private static double @Nullable [] adaptation(IccTags tags) {
    ByteBuffer bytes = tags.find("chad", 44);
    if (bytes == null || !IccTags.signature(bytes, 0).equals("sf32")) {
      return null;
    }
    double[] matrix = new double[9];
    for (int i = 0; i < 9; i++) {
      matrix[i] = IccTags.fixed(bytes, 8 + 4 * i);
    }
    return matrix;
  }

  private static boolean believable(double[] white) {
    return Arrays.stream(Bradford.cones(white))
        .allMatch(cone -> cone >= LEAST_CONE && cone <= 1 / LEAST_CONE);
  }
}
