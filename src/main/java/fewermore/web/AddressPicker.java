package fewermore.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Chooses the address that tablets use. It is handed the interfaces and the address of the default route;
 * it never asks the machine.
 */
public final class AddressPicker {
  private static final List<String> NOT_A_CLASSROOM = List.of(
      "docker", "veth", "br-", "vmnet", "vbox", "vethernet", "utun", "tun", "tap", "wg", "ppp", "awdl", "llw", "zt");

  /**
   * @param best the address to show big, or empty when no network is there
   * @param others further addresses tablets on another network could use
   * @param vpn the default route leaves by an interface that tablets can't reach
   * @param publicRange the best address lies outside the private ranges: a browser may warn at the first visit
   */
  public record Choice(Optional<String> best, List<String> others, boolean vpn, boolean publicRange) {}

  private AddressPicker() {}

  /** @param defaultRoute the local address the default route leaves from, or null */
  public static Choice choose(List<NetworkPort> ports, String defaultRoute) {
    return choose(ports, defaultRoute, null);
  }

  /**
   * @param defaultRoute the local address the default route leaves from, or null
   * @param chosen name of the interface the teacher chose before, or null: its address comes first while it has one
   */
  public static Choice choose(List<NetworkPort> ports, String defaultRoute, String chosen) {
    List<String> usable = new ArrayList<>();
    for (NetworkPort port : ports) {
      if (port.up() && !port.loopback() && !port.pointToPoint() && !named(port)) {
        port.addresses().stream().filter(address -> !address.startsWith("169.254.")).forEach(usable::add);
      }
    }
    boolean routeUsable = defaultRoute != null && usable.remove(defaultRoute);
    boolean vpn = !routeUsable && defaultRoute != null
        && ports.stream().anyMatch(port -> !port.loopback() && port.addresses().contains(defaultRoute));
    if (routeUsable) {
      usable.add(0, defaultRoute);
    }
    if (chosen != null) {
      ports.stream().filter(port -> port.name().equals(chosen)).flatMap(port -> port.addresses().stream())
          .filter(usable::remove).findFirst().ifPresent(address -> usable.add(0, address));
    }
    Optional<String> best = usable.stream().findFirst();
    return new Choice(best, usable.isEmpty() ? List.of() : List.copyOf(usable.subList(1, usable.size())), vpn,
        best.isPresent() && !privateRange(best.get()));
  }

  private static boolean named(NetworkPort port) {
    String name = port.name().toLowerCase(Locale.ROOT);
    return NOT_A_CLASSROOM.stream().anyMatch(name::startsWith) || name.contains("vethernet") || name.contains("virtualbox");
  }

  /** 10/8, 172.16/12, 192.168/16 and 100.64/10, and loopback. */
  static boolean privateRange(String address) {
    String[] parts = address.split("\\.");
    int first = Integer.parseInt(parts[0]);
    int second = Integer.parseInt(parts[1]);
    return first == 10 || first == 127 || first == 172 && second >= 16 && second <= 31
        || first == 192 && second == 168 || first == 100 && second >= 64 && second <= 127;
  }
}
