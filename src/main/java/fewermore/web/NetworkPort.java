package fewermore.web;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;

/**
 * A network interface of this laptop, as far as the choice of an address needs it. IPv4 only.
 *
 * @param hardware its hardware address as {@code 0a:1b:2c:3d:4e:5f}, or null where the machine does not say
 */
public record NetworkPort(
    String name, boolean up, boolean loopback, boolean pointToPoint, List<String> addresses, String hardware) {
  public NetworkPort {
    addresses = List.copyOf(addresses);
  }

  public NetworkPort(String name, boolean up, boolean loopback, boolean pointToPoint, List<String> addresses) {
    this(name, up, loopback, pointToPoint, addresses, null);
  }

  /** The interfaces of this machine now; empty when it does not say. */
  public static List<NetworkPort> ofThisMachine() {
    List<NetworkPort> ports = new ArrayList<>();
    try {
      for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        List<String> addresses = Collections.list(each.getInetAddresses()).stream()
            .filter(Inet4Address.class::isInstance)
            .map(InetAddress::getHostAddress)
            .toList();
        ports.add(new NetworkPort(
            each.getDisplayName() == null ? each.getName() : each.getName() + " " + each.getDisplayName(),
            each.isUp(), each.isLoopback(), each.isPointToPoint(), addresses, hardware(each)));
      }
    } catch (SocketException e) {
      return List.of();
    }
    return ports;
  }

  private static String hardware(NetworkInterface each) throws SocketException {
    byte[] address = each.getHardwareAddress();
    return address == null ? null : HexFormat.ofDelimiter(":").formatHex(address);
  }
}
