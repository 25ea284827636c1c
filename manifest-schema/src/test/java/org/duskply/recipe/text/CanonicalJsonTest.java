package org.duskply.recipe.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Documents of the test set of RFC 8785's author, with SHA-256 of the published outputs. */
@Tag("bits")
class CanonicalJsonTest {
  @Test
  void arrays() throws Exception {
    check(
        "[56,{\"d\":true,\"10\":null,\"1\":[]}]",
        "[56,{\"1\":[],\"10\":null,\"d\":true}]",
        "099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42");
  }

  @Test
  void structures() throws Exception {
    check(
        """
        {"1": {"f": {"f": "hi", "F": 5}, "\\n": 56.0}, "10": {}, "": "empty", "a": {},
         "111": [{"e": "yes", "E": "no"}], "A": {}}""",
        "{\"\":\"empty\",\"1\":{\"\\n\":56,\"f\":{\"F\":5,\"f\":\"hi\"}},\"10\":{},"
            + "\"111\":[{\"E\":\"no\",\"e\":\"yes\"}],\"A\":{},\"a\":{}}",
        "605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5");
  }

  @Test
  void values() throws Exception {
    check(
        """
        {"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
         "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
         "literals": [null, true, false]}""",
        "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
            + "\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
        "2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb");
  }

  @Test
  void unicodeIsNotNormalised() throws Exception {
    String text = CanonicalJson.text(Map.of("Unnormalized Unicode", "A\u030a"));
    assertThat(sha256(text))
        .isEqualTo("0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3");
  }

  /** RFC 8785, 3.2.3: names sort by UTF-16 units, so U+1F602 comes before U+FB33. */
  @Test
  void keysSortByUtf16Units() {
    Map<String, Object> map = new TreeMap<>(java.util.Comparator.reverseOrder());
    for (String key : List.of("€", "\r", "\n", "1", "\u0080", "😂", "ö", "\ufb33", "</script>")) {
      map.put(key, 0);
    }
    String text = CanonicalJson.text(map);
    assertThat(Arrays.asList(text.substring(1, text.length() - 1).split(":0,?")))
        .containsExactly(
            "\"\\n\"",
            "\"\\r\"",
            "\"1\"",
            "\"</script>\"",
            "\"\u0080\"",
            "\"ö\"",
            "\"€\"",
            "\"😂\"",
            "\"\ufb33\"");
  }

  /** Computed with an independent implementation (node), see the design's check values 11.1. */
  @Test
  void recipeShaped() throws Exception {
    check(
        """
        {"recipe": "twilight", "version": 1, "layers": [
           {"name": "pop 1", "blend": "lighten", "opacity": 0.80,
            "mask": {"feather": 2.50e1, "polygon": [[0,0],[1E2,0.0],[100,1e2]]}},
           {"name": "ciel €", "exposure": -0.0}],
         "é": null, "A": true, "a": 1e21, "tiny": 1e-7}""",
        "{\"A\":true,\"a\":1e+21,\"layers\":[{\"blend\":\"lighten\",\"mask\":{\"feather\":25,"
            + "\"polygon\":[[0,0],[100,0],[100,100]]},\"name\":\"pop 1\",\"opacity\":0.8},"
            + "{\"exposure\":0,\"name\":\"ciel €\"}],\"recipe\":\"twilight\",\"tiny\":1e-7,"
            + "\"version\":1,\"é\":null}",
        "d58e664c1a8f1d440e5bbf65e94286660beacd4b5c2560a0942d35ec63c62480");
  }

  @Test
  void halfACharacterIsAnError() {
    for (String half : List.of("\ud800", "x\udc00", "\ud800x")) {
      assertThatThrownBy(() -> CanonicalJson.text(half))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  private static void check(String json, String canonical, String hash) throws Exception {
    Source source = new Source("vector.json", json);
    Problems problems = new Problems(source);
    Tree tree = TextReader.read(source, problems);
    String text = CanonicalJson.text(new PlainReader(problems).plain(tree, ""));
    assertThat(problems.inOrder()).isEmpty();
    assertThat(text).isEqualTo(canonical);
    assertThat(sha256(text)).isEqualTo(hash);
  }

  private static String sha256(String text) throws Exception {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
  }
}
