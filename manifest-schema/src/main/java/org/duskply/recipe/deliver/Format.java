package org.duskply.recipe.deliver;

/** File formats that can be delivered, told by the file's ending. */
public enum Format {
  TIFF,
  PNG,
  JPEG
}
