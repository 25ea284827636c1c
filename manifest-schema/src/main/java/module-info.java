/** What a recipe can say: its model, reading, problems, schema, canonical form and hashes. */
module org.duskply.recipe {
  requires static org.jspecify;
  requires tools.jackson.core;
  requires tools.jackson.databind;
  requires tools.jackson.dataformat.yaml;
  requires org.snakeyaml.engine;

  exports org.duskply.recipe;
  exports org.duskply.recipe.shape;
  exports org.duskply.recipe.step;
  exports org.duskply.recipe.mask;
  exports org.duskply.recipe.adjust;
  exports org.duskply.recipe.deliver;
}
