package org.duskply.recipe;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.text.CanonicalJson;
import org.duskply.recipe.text.PictureWriter;
import org.duskply.recipe.text.PlainWriter;

/**
 * The canonical form of a recipe: two recipes that say the same have the same text, however they
 * were written. Short forms are expanded, values equal to their defaults left out, as are {@code
 * title}, {@code notes} and {@code x-} keys; the rest is JSON by RFC 8785, hashed by SHA-256 (FIPS
 * 180-4) over its UTF-8 bytes.
 *
 * <p>There are two. The <i>recipe</i> form holds all that the recipe says, with its names. The
 * <i>picture</i> form holds what the picture depends on: grid, base, working space, the frames and
 * masks that are used, the steps that change something, those of the finish included, and the crop.
 * In it frames and masks go by number ({@code #1}) in the order of first use and equal ones have
 * one number, so that a new name, or a mask written out in place of a named one, changes nothing.
 */
public final class Canonical {
  private Canonical() {}

  /** The canonical text of all that the recipe says. */
  public static String recipe(Recipe recipe) {
    StepNames names = StepNames.of(recipe);
    PlainWriter writer = new RecipeForm(names);
    Map<String, Object> all = new LinkedHashMap<>();
    ((Map<?, ?>) writer.record(recipe)).forEach((key, value) -> all.put((String) key, value));
    if (!recipe.alternates().isEmpty()) {
      Map<String, Object> alternates = new LinkedHashMap<>();
      recipe
          .alternates()
          .forEach((name, its) -> alternates.put(name, alternate(recipe, names, its, writer)));
      all.put("alternates", alternates);
    }
    return CanonicalJson.text(all);
  }

  /** Where a step may be called in several ways, the one that it goes by. */
  private static final class RecipeForm extends PlainWriter {
    private final StepNames names;

    RecipeForm(StepNames names) {
      super(Form.CANONICAL);
      this.names = names;
    }

    @Override
    protected Object mention(Kind.Mention kind, String name) {
      return kind.list() == NameList.STEPS ? name(names, name) : name;
    }
  }

  private static String name(StepNames names, String step) {
    return names.path(step).map(names::name).orElse(step);
  }

  /** What an alternate sets is written as the changed step has it, so that it has one form. */
  private static Map<String, Object> alternate(
      Recipe recipe, StepNames names, Alternate alternate, PlainWriter writer) {
    Map<String, Object> set = new LinkedHashMap<>();
    Alternates.changedSteps(recipe, names, alternate)
        .forEach(
            (name, step) -> {
              Set<String> keys = alternate.set().getOrDefault(name, Map.of()).keySet();
              Map<String, Object> values = writer.keys(step, keys);
              if (!values.isEmpty()) {
                set.put(name(names, name), values);
              }
            });
    Map<String, Object> plain = new LinkedHashMap<>();
    plain.put("skip", inOrder(alternate.skip(), names));
    plain.put("show", inOrder(alternate.show(), names));
    plain.put("set", set);
    plain.values().removeIf(value -> value.equals(List.of()) || value.equals(Map.of()));
    return plain;
  }

  /** Names of steps, each once: their order in an alternate means nothing. */
  private static List<String> inOrder(List<String> steps, StepNames names) {
    return steps.stream().map(step -> name(names, step)).distinct().sorted().toList();
  }

  /**
   * The canonical text of what the picture depends on.
   *
   * @throws IllegalArgumentException if a recipe built by a program uses a name that is not there,
   *     or masks in a ring
   */
  public static String picture(Recipe recipe) {
    StepPlaces steps = StepPlaces.of(recipe);
    PictureWriter writer =
        new PictureWriter(
            Map.of(NameList.FRAMES, recipe.frames(), NameList.MASKS, recipe.masks()),
            steps::kept,
            steps::place);
    Map<String, Object> picture = new LinkedHashMap<>();
    picture.put("duskply", recipe.version());
    if (recipe.grid() != null) {
      picture.put("grid", writer.record(recipe.grid()));
    }
    if (recipe.working() != null) {
      picture.put("working", recipe.working().key());
    }
    picture.put("base", writer.number(NameList.FRAMES, recipe.base()));
    List<Object> done = writer.list(recipe.steps());
    if (!done.isEmpty()) {
      picture.put("steps", done);
    }
    Map<String, Object> finish = finish(recipe.finish(), writer);
    if (!finish.isEmpty()) {
      picture.put("finish", finish);
    }
    picture.put("frames", writer.contents(NameList.FRAMES));
    List<Object> masks = writer.contents(NameList.MASKS);
    if (!masks.isEmpty()) {
      picture.put("masks", masks);
    }
    return CanonicalJson.text(picture);
  }

  private static Map<String, Object> finish(Finish finish, PictureWriter writer) {
    Map<String, Object> finished = new LinkedHashMap<>();
    if (finish.crop() != null) {
      finished.put("crop", writer.record(finish.crop()));
    }
    List<Object> steps = writer.list(finish.steps());
    if (!steps.isEmpty()) {
      finished.put("steps", steps);
    }
    return finished;
  }

  /** SHA-256 of {@link #recipe}, 64 hexadecimal digits. */
  public static String recipeHash(Recipe recipe) {
    return sha256(recipe(recipe));
  }

  /** SHA-256 of {@link #picture}, 64 hexadecimal digits. */
  public static String pictureHash(Recipe recipe) {
    return sha256(picture(recipe));
  }

  private static String sha256(String text) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
