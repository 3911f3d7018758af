package fewermore.web;

import java.io.IOException;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.List;

/** What the app asks about the network it is on; tests hand in their own. */
public interface Network {
  List<NetworkPort> ports();

  /** The local address the default route leaves from, or null. */
  String defaultRoute();

  /** The laptop's own name without a dot, or null. */
  String hostName();

  /** The machine this runs on. Nothing is sent: a datagram socket is only aimed. */
  static Network ofThisMachine() {
    return new Network() {
      @Override
      public List<NetworkPort> ports() {
        return NetworkPort.ofThisMachine();
      }

      @Override
      public String defaultRoute() {
        try (DatagramSocket socket = new DatagramSocket()) {
          // 198.51.100.0/24 is kept for documentation (RFC 5737); connecting a datagram socket sends no packet.
          socket.connect(new InetSocketAddress(InetAddress.getByAddress(new byte[] {(byte) 198, 51, 100, 1}), 9));
          String local = socket.getLocalAddress().getHostAddress();
          return "0.0.0.0".equals(local) ? null : local;
        } catch (IOException | RuntimeException e) {
          return null;
        }
      }

      @Override
      public String hostName() {
        String name = System.getenv().getOrDefault("HOSTNAME", System.getenv("COMPUTERNAME"));
        return name == null || name.isBlank() ? null : name.split("\\.")[0].toLowerCase(java.util.Locale.ROOT);
      }
    };
  }

  /** A laptop on no network but its own loopback: for tests. */
  static Network loopbackOnly() {
    return new Network() {
      @Override
      public List<NetworkPort> ports() {
        return List.of(new NetworkPort("lo", true, true, false, List.of("127.0.0.1")));
      }

      @Override
      public String defaultRoute() {
        return null;
      }

      @Override
      public String hostName() {
        return null;
      }
    };
  }
}
