package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class AddressPickerTest {
  private static final NetworkPort LOOPBACK = new NetworkPort("lo", true, true, false, List.of("127.0.0.1"));
  private static final NetworkPort WIFI = new NetworkPort("wlan0", true, false, false, List.of("192.168.1.23"));
  private static final NetworkPort CABLE = new NetworkPort("eth0", true, false, false, List.of("10.4.0.9"));
  private static final NetworkPort DOCKER = new NetworkPort("docker0", true, false, false, List.of("172.17.0.1"));
  private static final NetworkPort TUNNEL = new NetworkPort("utun3", true, false, true, List.of("10.99.0.2"));
  private static final NetworkPort NO_LEASE = new NetworkPort("en5", true, false, false, List.of("169.254.3.4"));
  private static final NetworkPort DOWN = new NetworkPort("wlan1", false, false, false, List.of("192.168.7.7"));
  private static final NetworkPort PUBLIC = new NetworkPort("wlan0", true, false, false, List.of("131.10.20.30"));
  private static final NetworkPort HYPER =
      new NetworkPort("eth3 vEthernet (Default Switch)", true, false, false, List.of("172.29.0.1"));

  static Stream<Arguments> networks() {
    return Stream.of(
        Arguments.of("Wi-Fi beside Docker, a VPN and no lease",
            List.of(LOOPBACK, DOCKER, TUNNEL, NO_LEASE, DOWN, HYPER, WIFI), "192.168.1.23", "192.168.1.23", List.of(),
            false, false),
        Arguments.of("two networks: the one with the default route first",
            List.of(WIFI, CABLE), "10.4.0.9", "10.4.0.9", List.of("192.168.1.23"), false, false),
        Arguments.of("two networks, no route to anywhere", List.of(WIFI, CABLE), null, "192.168.1.23",
            List.of("10.4.0.9"), false, false),
        Arguments.of("the VPN took the default route", List.of(WIFI, TUNNEL), "10.99.0.2", "192.168.1.23", List.of(),
            true, false),
        Arguments.of("no network", List.of(LOOPBACK, NO_LEASE, DOWN), null, null, List.of(), false, false),
        Arguments.of("a district with public addresses", List.of(PUBLIC), "131.10.20.30", "131.10.20.30", List.of(),
            false, true));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("networks")
  void theAddressIsTheOneTabletsCanReach(
      String what, List<NetworkPort> ports, String route, String best, List<String> others, boolean vpn,
      boolean publicRange) {
    AddressPicker.Choice choice = AddressPicker.choose(ports, route);
    assertEquals(best, choice.best().orElse(null));
    assertEquals(others, choice.others());
    assertEquals(vpn, choice.vpn());
    assertEquals(publicRange, choice.publicRange());
  }

  @Test
  void theNetworkTheTeacherChoseComesFirstWhileItHasAnAddress() {
    List<NetworkPort> both = List.of(WIFI, CABLE);
    assertEquals("192.168.1.23", AddressPicker.choose(both, "10.4.0.9", "wlan0").best().orElseThrow());
    assertEquals(List.of("10.4.0.9"), AddressPicker.choose(both, "10.4.0.9", "wlan0").others());
    assertEquals("10.4.0.9", AddressPicker.choose(List.of(CABLE), "10.4.0.9", "wlan0").best().orElseThrow());
    assertEquals("10.4.0.9", AddressPicker.choose(both, "10.4.0.9", "docker0").best().orElseThrow(),
        "what tablets can't reach is not chosen");
  }

  /** A network that changes under the running app. */
  private static final class Moving implements Network {
    private volatile List<NetworkPort> ports = List.of(LOOPBACK, WIFI);

    @Override
    public List<NetworkPort> ports() {
      return ports;
    }

    @Override
    public String defaultRoute() {
      return null;
    }

    @Override
    public String hostName() {
      return null;
    }
  }

  @Test
  void aChangeWhileTheAppRunsIsSeenSaidAndAnsweredTo() throws Exception {
    Moving network = new Moving();
    java.nio.file.Path folder = java.nio.file.Files.createTempDirectory("fewermore-moving");
    Settings settings = new Settings(folder, 0, 0, "0.0.0.0", null);
    try (fewermore.store.Database database = fewermore.store.Stores.open(folder)) {
      Services services = new Services(settings, database, network, java.time.Clock.systemUTC());
      services.reach.opened(8420);
      Watch.look(services);
      assertEquals("http://192.168.1.23:8420", services.reach.address().orElseThrow());
      assertEquals(java.util.Optional.empty(), Watch.changedSince(services, java.time.Instant.EPOCH));
      network.ports = List.of(LOOPBACK, NO_LEASE);
      Watch.look(services);
      assertEquals(java.util.Optional.empty(), services.reach.address(), "no network is no new address");
      network.ports = List.of(LOOPBACK, new NetworkPort("wlan0", true, false, false, List.of("192.168.1.99")));
      Watch.look(services);
      assertEquals("http://192.168.1.23:8420",
          Watch.changedSince(services, java.time.Instant.EPOCH).orElseThrow().before());
      assertTrue(services.reach.knows("192.168.1.99:8420"));
      assertFalse(services.reach.knows("192.168.1.23:8420"), "it is another machine's now");
    }
  }

  @ParameterizedTest
  @MethodSource("edges")
  void thePrivateRangesEndWhereTheyEnd(String address, boolean inside) {
    assertEquals(inside, AddressPicker.privateRange(address));
  }

  /** RFC 1918 and, for 100.64/10, RFC 6598 (from memory). */
  static Stream<Arguments> edges() {
    return Stream.of(
        Arguments.of("10.0.0.0", true), Arguments.of("11.0.0.0", false), Arguments.of("172.15.255.255", false),
        Arguments.of("172.16.0.0", true), Arguments.of("172.31.255.255", true), Arguments.of("172.32.0.0", false),
        Arguments.of("192.168.0.0", true), Arguments.of("192.169.0.0", false), Arguments.of("100.63.0.0", false),
        Arguments.of("100.64.0.0", true), Arguments.of("100.127.255.255", true), Arguments.of("100.128.0.0", false));
  }
}
