package fewermore.web;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How tablets reach this laptop, and by which names the app answers at all. */
public final class Reach {
  private final Settings settings;
  private final Network network;
  private volatile int port;

  Reach(Settings settings, Network network) {
    this.settings = settings;
    this.network = network;
    this.port = settings.port();
  }

  /** The port that was really opened, where any free one was asked for. */
  void opened(int port) {
    this.port = port;
  }

  /** What to show the teacher; asks the network anew, an address can change at any time. */
  public AddressPicker.Choice choice() {
    if (boundToOne()) {
      return new AddressPicker.Choice(Optional.of(settings.host()), List.of(), false,
          !AddressPicker.privateRange(settings.host()));
    }
    return AddressPicker.choose(network.ports(), network.defaultRoute());
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
