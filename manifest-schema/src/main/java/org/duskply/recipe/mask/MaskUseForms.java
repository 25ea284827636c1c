package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Kind;
import org.jspecify.annotations.Nullable;

/** The two forms of a {@link MaskUse}, for those who only know Shapes. */
final class MaskUseForms implements Kind.NameOrThing {
  @Override
  public Object named(String name) {
    return new MaskUse.Named(name);
  }

  @Override
  public Object written(Object thing) {
    return new MaskUse.Inline((Mask) thing);
  }

  @Override
  public @Nullable String name(Object form) {
    return form instanceof MaskUse.Named named ? named.name() : null;
  }

  @Override
  public Record thing(Object form) {
    return ((MaskUse.Inline) form).mask();
  }
}
