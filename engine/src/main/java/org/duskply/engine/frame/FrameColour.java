package org.duskply.engine.frame;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccException;
import org.duskply.engine.colour.LookUpTables;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.ReadsAs;
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

  private static final String TABLES =
      "The frame's colour profile works by look-up tables: its colours are as true as these are.";

  /** As {@link #of(String, FrameInfo, NamedSpace, ReadsAs)}, by what the file says. */
  public static FrameColour of(String name, FrameInfo info, @Nullable NamedSpace override) {
    return of(name, info, override, null);
  }

  /**
   * Decides.
   *
   * @param name the file's name, for the sentence of a refusal
   * @param override the recipe's word on this frame's colour space, if it has one
   * @param readsAs linear: the space's primaries count, its curve does not; encoded: its curve
   *     does, in files of floats without a profile too; null: what the file says
   * @throws FrameException if nothing says what the file's colours look like: reading the frame in
   *     any other space would be silently wrong
   */
  public static FrameColour of(
      String name, FrameInfo info, @Nullable NamedSpace override, @Nullable ReadsAs readsAs) {
    if (info.colours() == CMYK) {
      return inks(name, info, override, readsAs);
    }
    if (override != null) {
      return straight(
          new FrameColour(
              ColourSpace.of(override), "The recipe reads it as " + override.key() + ".", null),
          readsAs);
    }
    byte[] profile = info.profile();
    if (profile == null) {
      return withoutProfile(info, null, readsAs);
    }
    try {
      ColourSpace space = ProfileSpaces.of(profile);
      String misfit = misfit(space, info);
      if (misfit != null) {
        return withoutProfile(info, misfit, readsAs);
      }
      return followed(name, info, space, readsAs);
    } catch (IccException e) {
      return withoutProfile(info, e.getMessage() + " It was not used.", readsAs);
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
      String name, FrameInfo info, ColourSpace space, @Nullable ReadsAs readsAs) {
    String reason = "Its own colour profile is followed (" + space.name() + ").";
    if (space.tables() != null) {
      if (readsAs == ReadsAs.LINEAR) {
        throw new FrameException(
            name
                + " has a colour profile of look-up tables, which knows no linear light; give the"
                + " frame's profile in the recipe as well.");
      }
      return new FrameColour(space, reason, TABLES);
    }
    boolean bent = space.curve(0) != TransferCurve.identity();
    if (readsAs == null && bent && info.kind() == Samples.Kind.FLOATS) {
      return new FrameColour(
          space,
          reason,
          "The frame holds floats and its colour profile has a tone curve: they are read through"
              + " that curve.");
    }
    return straight(new FrameColour(space, reason, null), readsAs);
  }

  /** The values of CMYK mean nothing without the tables of a press. */
  private static FrameColour inks(
      String name, FrameInfo info, @Nullable NamedSpace override, @Nullable ReadsAs readsAs) {
    if (override != null || readsAs == ReadsAs.LINEAR) {
      throw new FrameException(
          name + " holds CMYK colours, which no profile for RGB can describe; save it as RGB.");
    }
    byte[] profile = info.profile();
    String why = "it has no colour profile";
    try {
      ColourSpace space = profile == null ? null : ProfileSpaces.of(profile);
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

  private static FrameColour straight(FrameColour found, @Nullable ReadsAs readsAs) {
    ColourSpace linear = found.space.linear();
    return readsAs != ReadsAs.LINEAR || linear == found.space
        ? found
        : new FrameColour(
            linear,
            found.reason + " The recipe reads its numbers as linear light, whatever the curve.",
            found.notice);
  }

  private static FrameColour withoutProfile(
      FrameInfo info, @Nullable String why, @Nullable ReadsAs readsAs) {
    String before = why == null ? "" : why + " ";
    NamedSpace named = info.named();
    if (named != null) {
      return straight(
          new FrameColour(ColourSpace.of(named), "The file says it is " + named.key() + ".", why),
          readsAs);
    }
    if (readsAs == null && info.kind() == Samples.Kind.FLOATS) {
      return new FrameColour(
          ColourSpace.of(NamedSpace.SRGB).linear(),
          "Floats without a profile are read as linear.",
          before
              + "The frame holds floats without a colour profile and is read as linear light"
              + " in the primaries of sRGB.");
    }
    String sentence =
        readsAs == ReadsAs.LINEAR
            ? "The frame has no colour profile and is read in the primaries of sRGB."
            : "The frame has no colour profile and is read as sRGB.";
    return straight(
        new FrameColour(
            ColourSpace.of(NamedSpace.SRGB),
            "Without a profile it is read as sRGB.",
            why == null ? sentence : before + "The frame is read as sRGB."),
        readsAs);
  }
}
