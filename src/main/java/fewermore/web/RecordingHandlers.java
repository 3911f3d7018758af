package fewermore.web;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Classroom;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.VoicePage;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The teacher's own voice for a problem: recorded on the laptop, played, kept, thrown away. */
final class RecordingHandlers {
  private final Services services;
  private final TeacherHandlers teacher;

  RecordingHandlers(Services services, TeacherHandlers teacher) {
    this.services = services;
    this.teacher = teacher;
  }

  void page(Context request) {
    teacher.inClass(request, classroom -> {
      AssignedProblem problem = problem(request, classroom);
      teacher.render(request, "teacher/voice", VoicePage.of(problem,
          language -> services.voices.recorded(problem.id(), language)), teacher.frame(classroom, Place.PLAN));
    });
  }

  void sound(Context request) {
    teacher.inClass(request, classroom -> {
      byte[] sound = services.voices.recording(problem(request, classroom).id(), request.pathParam("language"))
          .orElseThrow(Refusal::notFound);
      request.contentType("audio/wav").result(sound);
    });
  }

  /** Takes a form with {@code language} and the file {@code sound}. */
  void keep(Context request) {
    teacher.inClass(request, classroom -> {
      AssignedProblem problem = problem(request, classroom);
      String language = language(request, problem);
      UploadedFile file = request.uploadedFile("sound");
      byte[] sound = file == null || file.size() > Wav.MOST_BYTES ? new byte[0] : bytes(file);
      if (!Wav.usable(sound)) {
        throw new Refusal(422, "A recording of at most " + Wav.LONGEST + " seconds was expected. Record it once more.");
      }
      services.voices.keep(problem.id(), language, sound, services.now());
      request.redirect("/voice/" + problem.id(), HttpStatus.SEE_OTHER);
    });
  }

  void throwAway(Context request) {
    teacher.inClass(request, classroom -> {
      AssignedProblem problem = problem(request, classroom);
      services.voices.delete(problem.id(), language(request, problem));
      request.redirect("/voice/" + problem.id(), HttpStatus.SEE_OTHER);
    });
  }

  private AssignedProblem problem(Context request, Classroom classroom) {
    return TabletHandlers.number(request.pathParam("problem"))
        .flatMap(problem -> services.voices.problem(classroom.id(), problem)).orElseThrow(Refusal::notFound);
  }

  /** The language of a form; one the problem is written in. */
  private static String language(Context request, AssignedProblem problem) {
    String language = String.valueOf(request.formParam("language"));
    if (!VoicePage.languages(problem).contains(language)) {
      throw new Refusal(422, "A language this problem is written in was expected. Go back and choose one.");
    }
    return language;
  }

  private static byte[] bytes(UploadedFile file) {
    try (InputStream in = file.content()) {
      return in.readNBytes(Wav.MOST_BYTES + 1);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
