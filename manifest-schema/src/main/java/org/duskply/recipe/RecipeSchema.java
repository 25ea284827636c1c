package org.duskply.recipe;

import org.duskply.recipe.text.PrettyJson;
import org.duskply.recipe.text.ReferencePage;
import org.duskply.recipe.text.SchemaWriter;

/** What a recipe can say, for editors and for people; both made from the Shapes. */
public final class RecipeSchema {
  private static final String ID = "urn:duskply:recipe:1";

  private RecipeSchema() {}

  /**
   * The JSON Schema (2020-12) of recipes. It sees keys, kinds of value and ranges; names that
   * nobody gave and rules between values are the reader's alone.
   */
  public static String text() {
    return PrettyJson.text(SchemaWriter.schema(Recipe.SHAPE, ID, "A Duskply recipe"));
  }

  /** The reference page of the recipe, as Markdown. */
  public static String reference() {
    return ReferencePage.text(Recipe.SHAPE);
  }
}
