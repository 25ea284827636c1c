package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.plan.Key;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Test;

/** What an encoded band is known by: all that decides its bytes, and nothing else. */
class SinkSpecTest {
  /** Words of the file's head, and what is done once a JPEG is whole. */
  private static final Set<String> ELSEWHERE =
      Set.of("target", "quality", "dotsPerInch", "captions");

  private static final Map<String, Object> ONE =
      Map.ofEntries(
          Map.entry("target", Path.of("a.tif")),
          Map.entry("format", Format.TIFF),
          Map.entry("depth", 8),
          Map.entry("profile", NamedSpace.SRGB),
          Map.entry("compress", Compress.DEFLATE),
          Map.entry("quality", 0.5),
          Map.entry("dither", false),
          Map.entry("width", 40),
          Map.entry("height", 30),
          Map.entry("bandRows", 8),
          Map.entry("working", ColourSpace.of(NamedSpace.SRGB)),
          Map.entry("dotsPerInch", 300),
          Map.entry("captions", Captions.NONE),
          Map.entry("deflateLevel", 0));

  private static final Map<String, Object> OTHER =
      Map.ofEntries(
          Map.entry("target", Path.of("b.tif")),
          Map.entry("format", Format.PNG),
          Map.entry("depth", 16),
          Map.entry("profile", NamedSpace.REC2020),
          Map.entry("compress", Compress.LZW),
          Map.entry("quality", 0.6),
          Map.entry("dither", true),
          Map.entry("width", 30),
          Map.entry("height", 40),
          Map.entry("bandRows", 16),
          Map.entry("working", ColourSpace.of(NamedSpace.REC2020)),
          Map.entry("dotsPerInch", 72),
          Map.entry("captions", Captions.NONE.with(CaptionField.CAPTION, "Dusk")),
          Map.entry("deflateLevel", 6));

  @Test
  void everyComponentIsInItOrBelongsElsewhere() throws ReflectiveOperationException {
    Key one = key(ONE);
    assertThat(key(ONE)).isEqualTo(one);
    Set<Key> keys = new HashSet<>(Set.of(one));
    for (RecordComponent component : SinkSpec.class.getRecordComponents()) {
      Map<String, Object> values = new HashMap<>(ONE);
      values.put(component.getName(), OTHER.get(component.getName()));
      Key key = key(values);
      if (ELSEWHERE.contains(component.getName())) {
        assertThat(key).as(component.getName()).isEqualTo(one);
      } else {
        assertThat(keys.add(key)).as(component.getName()).isTrue();
      }
    }
  }

  private static Key key(Map<String, Object> values) throws ReflectiveOperationException {
    RecordComponent[] components = SinkSpec.class.getRecordComponents();
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    Constructor<SinkSpec> constructor = SinkSpec.class.getConstructor(types);
    Object[] arguments = Arrays.stream(components).map(c -> values.get(c.getName())).toArray();
    KeyWriter writer = new KeyWriter();
    constructor.newInstance(arguments).describe(writer);
    return writer.done();
  }
}
