package fewermore.web;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Sitting;
import io.javalin.http.Context;
import java.util.Set;

/** Reading aloud on a tablet: the teacher's recording, and what the tablet says it can speak with. */
final class VoiceHandlers {
  private static final Set<String> VOICES = Set.of("local", "recorded", "none");

  private final Services services;
  private final TabletHandlers tablet;

  VoiceHandlers(Services services, TabletHandlers tablet) {
    this.services = services;
    this.tablet = tablet;
  }

  /** Takes {@code {"sitting","key","voice"}}. */
  void say(Context request) {
    HandHandlers.Said.of(services, request).ifPresent(said -> {
      String voice = said.body().path("voice").asText();
      if (!VOICES.contains(voice)) {
        request.status(422);
        return;
      }
      services.voices.say(said.sitting().id(), voice);
      services.live.changed(said.sitting().child().classroom());
      request.contentType("application/json").result("{\"fewermore\":1}");
    });
  }

  /** The teacher's recording of one of the child's own problems, in the language the child reads it in. */
  void recording(Context request) {
    Sitting sitting = tablet.openSitting(request);
    AssignedProblem problem = tablet.works(sitting).stream()
        .filter(work -> work.id().equals(request.pathParam("work"))).findFirst()
        .orElseThrow(Refusal::notFound).problem();
    byte[] sound = services.voices.recording(problem.id(), problem.languageFor(sitting.child().language()))
        .orElseThrow(Refusal::notFound);
    request.contentType("audio/wav").result(sound);
  }
}
