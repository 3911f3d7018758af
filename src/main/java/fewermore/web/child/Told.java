package fewermore.web.child;

import fewermore.marking.Part;
import fewermore.marking.Sign;
import java.util.Map;

/** What the tablet was last told of a hand-in: a sign a part, and at most two prompts. */
public record Told(Map<Part, Sign> signs, Map<Part, String> prompts) {
  public Told {
    signs = Map.copyOf(signs);
    prompts = Map.copyOf(prompts);
  }
}
