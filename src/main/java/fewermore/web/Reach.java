package fewermore.web;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/** How tablets reach this laptop, and by which names the app answers at all. */
public final class Reach {
  /** The setting that holds the name of the network the teacher chose. */
  static final String CHOSEN = "network";

  private final Settings settings;
  private final Network network;
  private final Supplier<String> chosen;
  private volatile int port;

  /** @param chosen the name of the network the teacher chose, or null */
  Reach(Settings settings, Network network, Supplier<String> chosen) {
    this.settings = settings;
    this.network = network;
    this.chosen = chosen;
    this.port = settings.port();
  }

  /** The port that was really opened, where any free one was asked for. */
  void opened(int port) {
    this.port = port;
  }

  int port() {
    return port;
  }

  /** What to show the teacher; asks the network anew, an address can change at any time. */
  public AddressPicker.Choice choice() {
    if (boundToOne()) {
      return new AddressPicker.Choice(Optional.of(settings.host()), List.of(), false,
          !AddressPicker.privateRange(settings.host()));
    }
    return AddressPicker.choose(network.ports(), network.defaultRoute(), chosen.get());
  }

  /** The address for tablets, for example {@code http://192.168.1.23:8420}; empty when there is no network. */
  public Optional<String> address() {
    return settings.publicAddress() != null
        ? Optional.of(settings.publicAddress().replaceAll("/+$", ""))
        : choice().best().map(this::at);
  }

  /** Further addresses, for tablets on another network. */
  public List<String> otherAddresses() {
    return choice().others().stream().map(this::at).toList();
  }

  private String at(String host) {
    return "http://" + host + ":" + port;
  }

  /** The interface that has an address of tablets, or empty: to remember the choice, and for the note for IT. */
  Optional<NetworkPort> portOf(String address) {
    String host = URI.create(address).getHost();
    return network.ports().stream().filter(each -> each.addresses().contains(host)).findFirst();
  }

  /** Whether a request from this remote address comes from this laptop itself. */
  boolean isThisLaptop(String remote) {
    String address = remote.replaceAll("[\\[\\]]", "");
    return address.equals("0:0:0:0:0:0:0:1") || address.equals("::1")
        || network.ports().stream().anyMatch(each -> each.addresses().contains(address));
  }

  private boolean boundToOne() {
    return !settings.host().equals("0.0.0.0");
  }

  /** Whether the name in a request's Host line is one of this laptop's: closes DNS rebinding. */
  boolean knows(String host) {
    if (host == null) {
      return false;
    }
    String name = host.replaceFirst(":\\d+$", "").toLowerCase(Locale.ROOT);
    return names().contains(name);
  }

  private List<String> names() {
    List<String> names = new ArrayList<>(List.of("localhost", "127.0.0.1"));
    network.ports().forEach(each -> names.addAll(each.addresses()));
    if (boundToOne()) {
      names.add(settings.host().toLowerCase(Locale.ROOT));
    }
    if (network.hostName() != null) {
      names.add(network.hostName());
      names.add(network.hostName() + ".local");
    }
    if (settings.publicAddress() != null) {
      String host = URI.create(settings.publicAddress()).getHost();
      if (host != null) {
        names.add(host.toLowerCase(Locale.ROOT));
      }
    }
    return names;
  }
}
