package fewermore.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** The one JSON reader and writer of the application. */
public final class Json {
  private static final ObjectMapper MAPPER =
      new ObjectMapper().configure(DeserializationFeature.FAIL_ON_TRAILING_TOKENS, true);

  private Json() {}

  /** @throws Unusable when the text is not one JSON value */
  public static JsonNode read(String text) {
    try {
      JsonNode node = MAPPER.readTree(text);
      if (node == null || node.isMissingNode()) {
        throw new Unusable("the line is empty; a JSON object was expected");
      }
      return node;
    } catch (JsonProcessingException e) {
      var at = e.getLocation();
      throw new Unusable("not JSON" + (at == null ? "" : " at character " + at.getColumnNr())
          + "; one JSON object a line was expected; check quotes and commas there");
    }
  }

  public static String write(JsonNode node) {
    return node.toString();
  }

  public static ObjectNode object() {
    return MAPPER.createObjectNode();
  }

  public static ArrayNode array() {
    return MAPPER.createArrayNode();
  }

  public static ObjectMapper mapper() {
    return MAPPER;
  }

  /** JSON from outside that can't be used: the message says where, what was expected, one thing to try. */
  public static final class Unusable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public Unusable(String message) {
      super(message);
    }
  }
}
