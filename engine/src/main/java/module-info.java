/** The compositing engine: a recipe and its frames in, finished pictures out. */
module org.duskply.engine {
  requires static org.jspecify;
  requires transitive org.duskply.recipe;
  requires transitive net.imglib2;
  requires java.desktop;
  requires com.twelvemonkeys.imageio.tiff;
  requires com.twelvemonkeys.imageio.jpeg;
  requires com.twelvemonkeys.imageio.metadata;

  exports org.duskply.engine;
}
