package org.duskply.recipe;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.duskply.recipe.text.Binder;
import org.duskply.recipe.text.ChangeChecks;
import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.Source;
import org.duskply.recipe.text.Spot;
import org.duskply.recipe.text.TextReader;
import org.duskply.recipe.text.Tree;
import org.duskply.recipe.text.TreePlaces;
import org.jspecify.annotations.Nullable;

/**
 * Reads recipes. All that is wrong is found in one pass, each with its place; nothing is skipped in
 * silence. A reader keeps no state and may be shared by threads.
 *
 * <p>A file whose name ends in {@code .json} is read as JSON, {@code .yaml} and {@code .yml} as
 * YAML; any other text is JSON when it begins like a JSON object.
 */
public final class RecipeReader {
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final boolean mayLeave;

  private RecipeReader(boolean mayLeave) {
    this.mayLeave = mayLeave;
  }

  /** A reader that refuses frames outside the recipe's folder. */
  public static RecipeReader strict() {
    return new RecipeReader(false);
  }

  /**
   * A reader that lets paths of frames leave the recipe's folder, for a caller that checks by
   * itself which folders are allowed.
   */
  public static RecipeReader allowingOtherFolders() {
    return new RecipeReader(true);
  }

  /**
   * The recipe in a file.
   *
   * @throws RecipeException with all problems when there are any
   */
  public static Recipe read(Path file) {
    return strict().check(file).orThrow();
  }

  /**
   * The recipe in a text.
   *
   * @param name what the text is called in places of problems, such as a file's name
   * @throws RecipeException with all problems when there are any
   */
  public static Recipe read(String name, String text) {
    return strict().check(name, text).orThrow();
  }

  /** Reads a file; one that cannot be opened is a problem too. */
  public Reading check(Path file) {
    String name = file.toString();
    if (Files.isDirectory(file)) {
      return failed(name, "this is a folder; name the recipe's file in it", "a folder", "a file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      if (Files.size(file) > Limits.FILE_BYTES) {
        return tooLarge(name);
      }
      return check(name, in);
    } catch (NoSuchFileException e) {
      return failed(name, "there is no such file", "nothing", "a recipe");
    } catch (IOException e) {
      return failed(name, "this file cannot be read", "an unreadable file", "a recipe");
    }
  }

  /**
   * Reads what a stream gives, at most {@link Limits#FILE_BYTES} and one more.
   *
   * @throws IOException when the stream fails
   */
  public Reading check(String name, InputStream in) throws IOException {
    return check(name, in.readNBytes(Limits.FILE_BYTES + 1));
  }

  /** Reads a file's bytes: UTF-8, with or without byte order mark. */
  public Reading check(String name, byte[] bytes) {
    if (bytes.length > Limits.FILE_BYTES) {
      return tooLarge(name);
    }
    boolean wide =
        bytes.length >= 2
            && ((bytes[0] == (byte) 0xfe && bytes[1] == (byte) 0xff)
                || (bytes[0] == (byte) 0xff && bytes[1] == (byte) 0xfe));
    if (wide) {
      String sentence = "this file is UTF-16 text; save it as UTF-8";
      return failed(name, sentence, "UTF-16", "UTF-8");
    }
    CharBuffer text = CharBuffer.allocate(bytes.length);
    int bad = decode(bytes, text);
    if (bad >= 0) {
      return notUtf8(name, text.flip().toString(), bytes[bad]);
    }
    return check(name, text.flip().toString());
  }

  /** Reads a text. */
  public Reading check(String name, String text) {
    if (text.length() > Limits.FILE_BYTES) {
      return tooLarge(name);
    }
    boolean marked = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK;
    Source source = new Source(name, marked ? text.substring(1) : text);
    Problems problems = new Problems(source);
    Tree tree = TextReader.read(source, problems);
    Recipe recipe = tree == null ? null : recipe(tree, problems);
    return new Reading(problems.any() ? null : recipe, problems.inOrder());
  }

  private @Nullable Recipe recipe(Tree tree, Problems problems) {
    if (Newer.refused(tree, problems)) {
      return null;
    }
    Binder.Bound<Recipe> bound = Binder.bind(Recipe.SHAPE, tree, problems);
    TreePlaces places = new TreePlaces(problems.source(), tree);
    StepNames steps = StepNames.of(places);
    Recipe recipe = bound.record();
    new ChangeChecks(Recipe.SHAPE, places, problems)
        .check(
            bound.mentions(),
            steps::path,
            path -> recipe == null ? null : StepNames.step(recipe, path));
    new NameChecks(bound.mentions(), steps, problems).check();
    if (!mayLeave) {
      PathChecks.insideFolder(bound.mentions(), problems);
    }
    if (recipe == null) {
      return null;
    }
    StepChecks stepChecks = new StepChecks(problems, places);
    stepChecks.check(recipe);
    StepMaskChecks stepMasks = new StepMaskChecks(recipe, steps, problems, places);
    stepMasks.check();
    MaskChecks masks = new MaskChecks(recipe, problems, places);
    masks.check(recipe);
    if (!problems.any()) { // Else what alternates make of it cannot be known.
      new AlternateChecks(recipe, steps, problems, places).check(stepChecks, stepMasks, masks);
    }
    stepChecks.checkAdjustments();
    return recipe.withPlaces(places);
  }

  /** Decodes into {@code text}; the index of the first byte that is not UTF-8, or −1. */
  private static int decode(byte[] bytes, CharBuffer text) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CoderResult result = decoder.decode(in, text, true);
    return result.isError() ? in.position() : -1;
  }

  private static Reading notUtf8(String name, String before, byte bad) {
    Source source = new Source(name, before);
    Problems problems = new Problems(source);
    Spot spot = source.spot(source.text().length());
    problems.add(
        spot,
        "",
        String.format(
            "this file is not UTF-8: the character here was saved in another encoding (byte %02X);"
                + " save it as UTF-8",
            bad),
        String.format("byte %02X", bad),
        "UTF-8");
    return new Reading(null, problems.inOrder());
  }

  private static Reading tooLarge(String name) {
    String limit = (Limits.FILE_BYTES >> 20) + " MB";
    return failed(
        name,
        "this file is larger than " + limit + ", the limit of a recipe; is it one?",
        "more than " + limit,
        "at most " + limit);
  }

  private static Reading failed(String name, String sentence, String found, String expected) {
    Problem problem =
        new Problem(
            Problem.Severity.PROBLEM,
            new Place(name, 1, 1),
            "",
            sentence,
            found,
            expected,
            null,
            "");
    return new Reading(null, List.of(problem));
  }
}
