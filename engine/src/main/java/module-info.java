/** The compositing engine: a recipe and its frames in, finished pictures out. */
module org.duskply.engine {
  requires static org.jspecify;
  requires transitive org.duskply.recipe;
  requires transitive net.imglib2;
  requires java.desktop;
  requires java.xml;
  requires com.twelvemonkeys.imageio.tiff;
  requires com.twelvemonkeys.imageio.jpeg;
  requires com.twelvemonkeys.imageio.metadata;
  requires static info.picocli;
  requires static me.tongfei.progressbar;

  exports org.duskply.engine;

  opens org.duskply.engine.command to
      info.picocli;
}
