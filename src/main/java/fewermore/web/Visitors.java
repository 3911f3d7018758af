package fewermore.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Which devices reached the tablets' port since the start, and what they said of themselves. In memory only. That this
 * laptop reaches itself proves nothing about its firewall, so its own requests are not kept.
 */
final class Visitors {
  private static final int MOST = 60;

  /** What a device's script found out; null where it did not say. */
  record Report(boolean storage, boolean english, boolean spanish) {}

  /**
   * A device.
   *
   * @param browser its name and version as far as the user agent tells
   * @param asked whether it opened the page that tries things out: only then does no report mean no script
   * @param report null until its script has reported
   */
  record Visitor(String address, String browser, Instant at, Instant asked, Report report) {}

  private final Predicate<String> thisLaptop;
  private final Map<String, Visitor> byAddress = new LinkedHashMap<>();

  /** @param thisLaptop whether an address is one of this laptop's own */
  Visitors(Predicate<String> thisLaptop) {
    this.thisLaptop = thisLaptop;
  }

  /** A request came. @param asking whether it is for the page that tries things out */
  synchronized void came(String address, String userAgent, boolean asking, Instant now) {
    if (thisLaptop.test(address)) {
      return;
    }
    Visitor before = byAddress.remove(address);
    if (before == null && byAddress.size() >= MOST) {
      byAddress.remove(byAddress.keySet().iterator().next());
    }
    byAddress.put(address, new Visitor(address, browser(userAgent), now,
        asking ? now : before == null ? null : before.asked,
        asking || before == null ? null : before.report));
  }

  /** The script of a device reported. */
  synchronized void reported(String address, Report report) {
    byAddress.computeIfPresent(address, (key, before) ->
        new Visitor(before.address, before.browser, before.at, before.asked, report));
  }

  /** Those that came at or after an instant, the newest first. */
  synchronized List<Visitor> since(Instant instant) {
    List<Visitor> all = new ArrayList<>(byAddress.values());
    all.removeIf(visitor -> visitor.at.isBefore(instant));
    java.util.Collections.reverse(all);
    return all;
  }

  /**
   * A browser's name for a teacher's eyes, for example {@code Safari 17.4 on an iPad}. Only what she needs to tell one
   * tablet from another; what is unknown is said to be so.
   */
  static String browser(String userAgent) {
    String agent = userAgent == null ? "" : userAgent;
    String name = version(agent, "Silk", "Silk/")
        .or(() -> version(agent, "Edge", "Edg/"))
        .or(() -> version(agent, "Firefox", "Firefox/"))
        .or(() -> version(agent, "Firefox", "FxiOS/"))
        .or(() -> version(agent, "Chrome", "CriOS/"))
        .or(() -> version(agent, "Chrome", "Chrome/"))
        .or(() -> agent.contains("Safari/") ? version(agent, "Safari", "Version/") : java.util.Optional.empty())
        .orElse("a browser it does not name");
    String on = agent.contains("iPad") ? " on an iPad"
        : agent.contains("iPhone") ? " on an iPhone"
        : agent.contains("CrOS") ? " on a Chromebook"
        : agent.contains("Android") ? " on Android"
        : agent.contains("Windows") ? " on Windows"
        // An iPad that asks for desktop pages names itself a Mac.
        : agent.contains("Macintosh") ? " on a Mac or an iPad"
        : agent.contains("Linux") ? " on Linux" : "";
    return name + on;
  }

  private static java.util.Optional<String> version(String agent, String name, String mark) {
    int at = agent.indexOf(mark);
    if (at < 0) {
      return java.util.Optional.empty();
    }
    String rest = agent.substring(at + mark.length());
    int end = 0;
    while (end < rest.length() && end < 6 && (Character.isDigit(rest.charAt(end)) || rest.charAt(end) == '.')) {
      end++;
    }
    return java.util.Optional.of((name + " " + rest.substring(0, end).replaceAll("(\\.0)*\\.?$", "")).strip());
  }
}
