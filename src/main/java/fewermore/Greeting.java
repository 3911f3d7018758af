package fewermore;

import fewermore.web.App;
import fewermore.web.QrCode;
import java.io.PrintStream;
import java.util.Optional;

/** What the terminal says at the start, in plain words. */
final class Greeting {
  private final String passphrase;
  private final boolean open;

  /**
   * @param passphrase one that everybody may know, or null when the teacher has her own
   * @param open whether her page is also shown in this laptop's browser
   */
  Greeting(String passphrase, boolean open) {
    this.passphrase = passphrase;
    this.open = open;
  }

  void print(App app, PrintStream out) {
    out.println();
    out.println("Fewermore is running.");
    out.println();
    out.println("  You, on this laptop:   " + app.teacherAddress());
    if (passphrase != null) {
      out.println("  Your passphrase:       " + passphrase);
      out.println("  The class is invented. It and all you do here are removed when Fewermore stops.");
    }
    Optional<String> address = app.reach().address();
    if (address.isPresent()) {
      out.println("  Tablets, on the Wi-Fi: " + address.get());
      if (app.reach().choice().vpn()) {
        out.println("  A VPN is on; tablets may not reach this laptop. Switch it off and look again.");
      }
      out.println("  The data lie in:       " + app.where());
      out.println();
      String door = app.doorAddress().orElse(address.get());
      out.println(app.doorAddress().isPresent()
          ? "Tablets scan this (today's door; it is on the Board too):"
          : "Tablets scan this (they come in when there is a class; today's door is then on the Board):");
      out.println();
      out.println(QrCode.forTerminal(door));
    } else {
      out.println("  Tablets:               no network found. Join the Wi-Fi; the Board shows the address then.");
      out.println("  The data lie in:       " + app.where());
    }
    if (open && !OpenPage.show(app.teacherAddress())) {
      out.println("No browser could be opened from here: open your page by hand.");
    }
    out.println("Closing this window or the laptop's lid stops the tablets. Stop with Ctrl-C.");
  }
}
