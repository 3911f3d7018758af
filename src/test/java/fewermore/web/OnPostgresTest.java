package fewermore.web;

import fewermore.store.OnPostgres;
import org.junit.jupiter.api.Nested;

/** The whole app, and with it every store, on a real PostgreSQL: the same tests as on the data file. */
@OnPostgres
class OnPostgresTest {
  @Nested class Routes extends RouteTableTest {}

  @Nested class Work extends WorkProtocolTest {}

  @Nested class Turns extends TurnsTest {}

  @Nested class People extends PeopleTest {}

  @Nested class Setup extends SetupTest {}

  @Nested class Cards extends DeskCardTest {}

  @Nested class Evidence extends EvidenceInTheTeachersHandTest {}

  @Nested class Hands extends HandsAndVoicesTest {}

  @Nested class Invented extends InventedClassesTest {}

  @Nested class Again extends MarkAgainTest {}

  @Nested class Plan extends PlanTellsTest {}

  @Nested class Room extends RoomLiveTest {}

  @Nested class Strategy extends StrategyDayTest {}

  @Nested class Week extends WeekAsItIsTest {}
}
