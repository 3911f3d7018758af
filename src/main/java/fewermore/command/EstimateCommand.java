package fewermore.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import fewermore.json.Json.Unusable;
import fewermore.json.StoryJson;
import fewermore.json.WorkJson;
import fewermore.marking.Marker;
import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.NumberRange;
import fewermore.reasoning.Estimate;
import fewermore.reasoning.Evidence;
import fewermore.reasoning.NextProblem;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Statement;
import fewermore.reasoning.Ways;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;

/**
 * {@code estimate}: a child's days of work in, ways of reasoning out, as JSON lines.
 *
 * <pre>
 * {"child":"c1","occasions":[{"day":"2026-10-05","problems":[{"story":{…},"work":{…}}]}]}
 * {"child":"c1","ways":{"from-the-story":0.031204,…},"says":"by-the-cue-word","strength":"looks-as-if",
 *  "next":{"unknown":"larger","wording":"fewer"}}
 * </pre>
 */
public final class EstimateCommand {
  private final ReasoningTable table;
  private final List<NextProblem.Candidate> candidates = NextProblem.candidates(NumberRange.WITHIN_100);

  private EstimateCommand(ReasoningTable table) {
    this.table = table;
  }

  /**
   * Estimates line by line until the input ends; closes neither stream.
   *
   * @return the exit code: 0, or 3 when at least one line could not be used
   */
  public static int run(InputStream in, OutputStream out, ReasoningTable table) throws IOException {
    return JsonLines.run(in, out, "child", new EstimateCommand(table)::estimate);
  }

  private ObjectNode estimate(JsonNode line) {
    JsonNode occasions = line.path("occasions");
    if (!occasions.isArray()) {
      throw new Unusable("occasions: a list was expected; give each day with its problems");
    }
    List<Evidence> evidence = new ArrayList<>();
    Kind last = null;
    LocalDate lastDay = null;
    for (int at = 0; at < occasions.size(); at++) {
      String where = "occasions[" + at + "]";
      LocalDate day = day(occasions.get(at), where);
      JsonNode problems = occasions.get(at).path("problems");
      if (!problems.isArray()) {
        throw new Unusable(where + ".problems: a list was expected; give each problem's story and work");
      }
      for (int i = 0; i < problems.size(); i++) {
        Comparison story;
        Work work;
        try {
          story = StoryJson.read(problems.get(i).get("story"));
          work = WorkJson.read(problems.get(i).get("work"));
        } catch (Unusable problem) {
          throw new Unusable(where + ".problems[" + i + "]: " + problem.getMessage());
        }
        Evidence.of(day, story, work, Marker.mark(story, work), table).ifPresent(evidence::add);
        if (lastDay == null || !day.isBefore(lastDay)) {
          last = story.kind();
          lastDay = day;
        }
      }
    }
    return reply(Estimate.of(evidence, table), last);
  }

  private static LocalDate day(JsonNode occasion, String where) {
    try {
      return LocalDate.parse(occasion.path("day").asText());
    } catch (DateTimeParseException e) {
      throw new Unusable(where + ".day: a date was expected; write it like 2026-10-05");
    }
  }

  private ObjectNode reply(Estimate estimate, Kind last) {
    ObjectNode reply = Json.object();
    ObjectNode ways = reply.putObject("ways");
    Ways chances = estimate.ways();
    for (WayOfReasoning way : WayOfReasoning.values()) {
      ways.put(way.id(), chances.of(way));
    }
    Statement statement = estimate.says();
    reply.put("says", statement.says() ? statement.way().id() : statement.strength().id());
    reply.put("strength", statement.strength().id());
    NextProblem.best(chances, candidates, last, true, table).ifPresent(next -> reply.putObject("next")
        .put("unknown", next.kind().unknown().id())
        .put("wording", next.kind().wording().id()));
    return reply;
  }
}
