package org.duskply.engine.frame;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccException;
import org.duskply.engine.colour.IccReader;
import org.duskply.engine.colour.LookUpTables;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * The colour space a frame is read in, and why. In this order: what the recipe says, the embedded
 * profile, the space that the file names, sRGB.
 *
 * @param space the colour space
 * @param reason a sentence for people who ask
 * @param notice a sentence for everyone, where something was assumed or left out
 */
public record FrameColour(ColourSpace space, String reason, @Nullable String notice) {
  private static final int CMYK = 4;

  /** Whether stored values stand for light itself or were bent by a tone curve. */
  public enum Values {
    /** Floats without a profile are light itself; all else follows the curve of its space. */
    BY_RULE,
    /** Light itself, in the primaries of the space. */
    LINEAR,
    /** Bent by the curve of the space. */
    ENCODED
  }

  /** As {@link #of(String, FrameInfo, NamedSpace, Values)}, by the rule. */
  public static FrameColour of(String name, FrameInfo info, @Nullable NamedSpace override) {
    return of(name, info, override, Values.BY_RULE);
  }

  /**
   * Decides.
   *
   * @param name the file's name, for the sentence of a refusal
   * @param override the recipe's word on this frame's colour space, if it has one
   * @param values the recipe's word on its values, or the rule
   * @throws FrameException if nothing says what the file's colours look like: reading the frame in
   *     any other space would be silently wrong
   */
  public static FrameColour of(
      String name, FrameInfo info, @Nullable NamedSpace override, Values values) {
    if (info.colours() == CMYK) {
      return inks(name, info, override, values);
    }
    if (override != null) {
      return straight(
          new FrameColour(
              ColourSpace.of(override), "The recipe reads it as " + override.key() + ".", null),
          values);
    }
    byte[] profile = info.profile();
    if (profile == null) {
      return withoutProfile(info, null, values);
    }
    try {
      ColourSpace space = IccReader.read(profile);
      String misfit = misfit(space, info);
      if (misfit != null) {
        return withoutProfile(info, misfit, values);
      }
      return followed(name, info, space, values);
    } catch (IccException e) {
      return withoutProfile(info, e.getMessage() + " It was not used.", values);
    }
  }

  /** Why a sound profile cannot be that of the file's pixels, or null. */
  private static @Nullable String misfit(ColourSpace space, FrameInfo info) {
    LookUpTables tables = space.tables();
    if (tables != null && tables.channels() == CMYK) {
      return "The embedded colour profile is for CMYK pictures and was not used.";
    }
    if (tables != null && info.colours() == 1) {
      return "The embedded colour profile is for RGB pictures and was not used.";
    }
    return space.grey() && info.colours() >= 3
        ? "The embedded colour profile is for grey pictures and was not used."
        : null;
  }

  private static FrameColour followed(
      String name, FrameInfo info, ColourSpace space, Values values) {
    String reason = "Its own colour profile is followed (" + space.name() + ").";
    if (space.tables() != null) {
      if (values == Values.LINEAR) {
        throw new FrameException(
            name
                + " has a colour profile of look-up tables, which knows no linear light; give the"
                + " frame's profile in the recipe as well.");
      }
      return new FrameColour(space, reason, TABLES);
    }
    boolean bent = space.curve(0) != TransferCurve.identity();
    if (values == Values.BY_RULE && bent && info.kind() == Samples.Kind.FLOATS) {
      return new FrameColour(
          space,
          reason,
          "The frame holds floats and its colour profile has a tone curve: they are read through"
              + " that curve.");
    }
    return straight(new FrameColour(space, reason, null), values);
  }

  private static final String TABLES =
      "The frame's colour profile works by look-up tables: colours are as close as its tables are.";

  /** The values of CMYK mean nothing without the tables of a press. */
  private static FrameColour inks(
      String name, FrameInfo info, @Nullable NamedSpace override, Values values) {
    if (override != null || values == Values.LINEAR) {
      throw new FrameException(
          name + " holds CMYK colours, which no profile for RGB can describe; save it as RGB.");
    }
    byte[] profile = info.profile();
    String why = "it has no colour profile";
    try {
      ColourSpace space = profile == null ? null : IccReader.read(profile);
      LookUpTables tables = space == null ? null : space.tables();
      if (space != null && tables != null && tables.channels() == CMYK) {
        return new FrameColour(
            space,
            "Its own colour profile for CMYK is followed.",
            "The frame holds CMYK colours, read through the look-up tables of its own profile.");
      }
      why = space == null ? why : "its colour profile is not for CMYK";
    } catch (IccException e) {
      why = "its colour profile is broken";
    }
    throw new FrameException(
        name
            + " holds CMYK colours and "
            + why
            + ", so that nothing says how they look; save it as RGB.");
  }

  private static FrameColour straight(FrameColour found, Values values) {
    return values == Values.LINEAR
        ? new FrameColour(
            found.space.linear(),
            found.reason + " The recipe reads its values as linear light.",
            found.notice)
        : found;
  }

  private static FrameColour withoutProfile(FrameInfo info, @Nullable String why, Values values) {
    String before = why == null ? "" : why + " ";
    NamedSpace named = info.named();
    if (named != null) {
      return straight(
          new FrameColour(
              ColourSpace.of(named), "The file says it is " + named.key() + ".", why),
          values);
    }
    if (values == Values.BY_RULE && info.kind() == Samples.Kind.FLOATS) {
      return new FrameColour(
          ColourSpace.of(NamedSpace.SRGB).linear(),
          "Floats without a profile are read as linear.",
          before
              + "The frame holds floats without a colour profile and is read as linear light"
              + " in the primaries of sRGB.");
    }
    String sentence =
        values == Values.LINEAR
            ? "The frame has no colour profile and is read in the primaries of sRGB."
            : "The frame has no colour profile and is read as sRGB.";
    return straight(
        new FrameColour(
            ColourSpace.of(NamedSpace.SRGB),
            "Without a profile it is read as sRGB.",
            why == null ? sentence : before + "The frame is read as sRGB."),
        values);
  }
}
