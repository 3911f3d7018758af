package fewermore.web;

import static fewermore.web.May.ANYONE;
import static fewermore.web.May.CHILD;
import static fewermore.web.May.DOOR;
import static fewermore.web.May.KEY;
import static fewermore.web.Route.get;
import static fewermore.web.Route.post;

import io.javalin.http.HandlerType;
import java.util.List;

/** All that a tablet can ask for, and who may. */
final class TabletRoutes {
  private TabletRoutes() {}

  static List<Route> of(TabletHandlers tablet) {
    CardDoor card = new CardDoor(tablet);
    HelloHandlers hello = new HelloHandlers(tablet);
    return List.of(
        get("/", ANYONE, tablet::start),
        get("/in/{door}", ANYONE, tablet::enter),
        get("/come-in", ANYONE, tablet::comeIn),
        post("/door", ANYONE, tablet::tapDoor),
        get("/come-in/{child}", DOOR, tablet::isThisYou),
        post("/come-in/{child}", DOOR, tablet::itIsMe),
        get("/mine", CHILD, tablet::mine),
        post("/mine/more", CHILD, tablet::oneMore),
        get("/mine/{work}", CHILD, tablet::work),
        post("/mine/{work}", CHILD, tablet::handIn),
        post("/mine/{work}/hand", CHILD, tablet.hands::raiseOrLower),
        post("/hand", KEY, tablet.hands::areUp),
        post("/voice", KEY, tablet.voices::say),
        get("/voice/{work}", CHILD, tablet.voices::recording),
        post("/leave", CHILD, tablet::leave),
        post("/work", KEY, tablet::send),
        new Route(HandlerType.OPTIONS, "/work", KEY, tablet::mayAnotherAddressSend),
        get("/pulse", ANYONE, tablet::pulse),
        get("/c/{card}", ANYONE, card::look),
        get("/C/{card}", ANYONE, card::look),
        post("/c/{card}", ANYONE, card::itIsMe),
        get(HelloHandlers.PATH, ANYONE, hello::hello),
        post(HelloHandlers.PATH, ANYONE, hello::report));
  }
}
