package fewermore.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.wording.ReadText;

/** What came of reading a text, as JSON: the story, or the reason and the place. */
public final class ReadingJson {
  private ReadingJson() {}

  /**
   * {@code {"kind":"compare","story":{…},"answer":38,"label":"shells"}} or
   * {@code {"kind":"declined","reason":"two-comparisons","at":[17,62],"says":"…"}}; places count UTF-16 units from 0,
   * as JavaScript does.
   */
  public static ObjectNode write(ReadText read) {
    return read.match(new ReadText.Cases<>() {
      @Override
      public ObjectNode understood(ReadText.Understood understood) {
        ObjectNode node = Json.object().put("kind", "compare");
        node.set("story", StoryJson.write(understood.story()));
        return node.put("answer", understood.story().answer()).put("label", understood.story().thing().many());
      }

      @Override
      public ObjectNode declined(ReadText.Declined declined) {
        ObjectNode node = Json.object().put("kind", "declined").put("reason", declined.reason().id());
        node.putArray("at").add(declined.at().get(0).start()).add(declined.at().get(0).end());
        return node.put("says", declined.says());
      }
    });
  }
}
