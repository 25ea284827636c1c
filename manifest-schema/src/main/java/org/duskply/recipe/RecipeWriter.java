package org.duskply.recipe;

import java.util.Map;
import org.duskply.recipe.text.PlainWriter;
import org.duskply.recipe.text.YamlEmitter;

/**
 * Writes recipes that programs have built as YAML that a photographer can go on editing. What is
 * written reads back to an equal recipe, places aside. To change a file that somebody wrote, edit
 * its text instead: comments and spacing are not kept here.
 */
public final class RecipeWriter {
  private RecipeWriter() {}

  /**
   * The text of a recipe. Nothing is checked: {@link RecipeReader#check(String, String)} of the
   * text tells what is wrong with it.
   *
   * @throws IllegalArgumentException if a number is not finite, a text holds half a character, or
   *     an {@code x-} key something other than text, numbers, truth values, null, lists and maps
   */
  public static String write(Recipe recipe) {
    @SuppressWarnings("unchecked") // the Shape of a recipe is a mapping without short form
    Map<String, Object> plain =
        (Map<String, Object>) new PlainWriter(PlainWriter.Form.SHORT).record(recipe);
    return YamlEmitter.text(plain);
  }
}
