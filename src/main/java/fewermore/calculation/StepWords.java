package fewermore.calculation;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says sentences about steps and pictures. English and Spanish are there; any other language gets English. */
public final class StepWords {
  private static final Pattern PLACE = Pattern.compile("\\{(\\d)\\}");
  private final ResourceBundle bundle;

  private StepWords(Locale language) {
    bundle = ResourceBundle.getBundle("fewermore.calculation.steps", language,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  public static StepWords in(Locale language) {
    return new StepWords(language);
  }

  /** @throws MissingResourceException when no text has that key: a bug */
  public String say(Said said) {
    Matcher place = PLACE.matcher(bundle.getString(said.key()));
    StringBuilder text = new StringBuilder();
    while (place.find()) {
      Object with = said.with().get(Integer.parseInt(place.group(1)));
      place.appendReplacement(text, with instanceof Pile pile ? pile(pile) : with.toString());
    }
    return place.appendTail(text).toString();
  }

  /** A state in words, one sentence after the other. */
  public String say(State state) {
    StringBuilder text = new StringBuilder();
    state.says().forEach(said -> text.append(text.isEmpty() ? "" : " ").append(say(said)));
    return text.toString();
  }

  /** What somebody did, as a sentence without its subject: {@code Trades 1 ten for 10 ones.} */
  public String did(Step step) {
    return say(step.tell(new Did()));
  }

  private static final class Did implements Step.Cases<Said> {
    private static Pile some(Piece piece, int count) {
      return Pile.EMPTY.with(piece, count);
    }

    @Override
    public Said put(Step.Put step) {
      return Said.of("did.put." + step.pile(), some(step.piece(), step.count()));
    }

    @Override
    public Said putBack(Step.PutBack step) {
      return Said.of("did.put-back", some(step.piece(), step.count()));
    }

    @Override
    public Said trade(Step.Trade step) {
      return Said.of("did.trade", some(step.give(), step.gives()), some(step.get(), step.gets()));
    }

    @Override
    public Said crossOut(Step.CrossOut step) {
      return Said.of("did.cross-out", some(step.piece(), step.count()));
    }

    @Override
    public Said join(Step.Join step) {
      return Said.of("did.join");
    }

    @Override
    public Said start(Step.Start step) {
      return Said.of("did.start", step.at());
    }

    @Override
    public Said jump(Step.Jump step) {
      return Said.of(step.by() > 0 ? "did.forward" : "did.back", Math.abs(step.by()), step.to());
    }

    @Override
    public Said breakUp(Step.Break step) {
      return Said.of("did.break", step.number(), step.tens(), step.ones());
    }

    @Override
    public Said regroup(Step.Regroup step) {
      return Said.of("did.regroup", step.tens(), step.ones());
    }

    @Override
    public Said combine(Step.Combine step) {
      return Said.of("did." + step.place().id(), step.to());
    }

    @Override
    public Said write(Step.Write step) {
      return Said.of("did.write", step.number());
    }
  }

  /** The name of a good way, for the teacher and for the child. */
  public String name(Way way) {
    return bundle.getString("way." + way.id());
  }

  public String name(StrategyKind kind) {
    return bundle.getString("kind." + kind.id());
  }

  /** {@code 5 tens and 2 ones}; kinds of piece that are not there are left out. */
  public String pile(Pile pile) {
    String text = "";
    Piece[] pieces = Piece.values();
    for (int at = pieces.length - 1; at >= 0; at--) {
      int count = pile.count(pieces[at]);
      if (count > 0) {
        String some = count + " " + bundle.getString(pieces[at].id() + (count == 1 ? ".one" : ".many"));
        text = text.isEmpty() ? some
            : some + bundle.getString(text.contains(bundle.getString("and")) ? "comma" : "and") + text;
      }
    }
    return text.isEmpty() ? bundle.getString("none") : text;
  }

  /** The texts that pictures are said with, by key: a tablet says its own. */
  public Map<String, String> picture() {
    Map<String, String> texts = texts();
    texts.keySet().removeIf(key -> key.startsWith("do.") || key.startsWith("did.") || key.startsWith("way.")
        || key.startsWith("kind."));
    return texts;
  }

  /** All texts by key. */
  public Map<String, String> texts() {
    Map<String, String> texts = new LinkedHashMap<>();
    new TreeSet<>(bundle.keySet()).forEach(key -> texts.put(key, bundle.getString(key)));
    return texts;
  }
}
