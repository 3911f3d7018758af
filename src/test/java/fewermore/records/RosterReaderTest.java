package fewermore.records;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.records.RosterReader.BadRow;
import fewermore.records.RosterReader.Roster;
import fewermore.records.RosterReader.Row;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class RosterReaderTest {
  /** Headers as several implementations of the 1EdTech OneRoster 1.1 CSV write them. */
  private static final String USERS_11 = "sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,username,"
      + "userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password\r\n";
  private static final String ENROLLMENTS = "sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,"
      + "userSourcedId,role,primary,beginDate,endDate\r\n";

  private static String user(String id, String enabled, String role, String given, String family) {
    return id + ",active,2026-06-01T00:00:00.000Z," + enabled + ",o1," + role + ",u" + id + ",," + given + "," + family
        + ",,,,,,,02,\r\n";
  }

  private static List<String> names(Roster roster) {
    return roster.rows().stream().map(Row::name).toList();
  }

  private static List<String> bad(Roster roster) {
    return roster.bad().stream().map(each -> each.line() + ": " + each.reason()).toList();
  }

  @Test
  void pastedNamesAreOneALine() {
    Roster roster = RosterReader.read(List.of("\uFEFFNoor\r\n\r\n  Elsie  Ann \nJosé\n"), null, Set.of());
    assertEquals(List.of("Noor", "Elsie Ann", "José"), names(roster));
    assertEquals(List.of(1, 3, 4), roster.rows().stream().map(Row::line).toList());
    assertEquals(List.of(), roster.bad());
  }

  @Test
  void ofACsvOnlyFirstNameAndOneLetterAreKept() {
    Roster roster = RosterReader.read(List.of(
        "Last Name,First Name,Language,Email\nAmes,Noor,English,x@example.org\n\"Brand, Jr.\",Noor,español,\n"), null, Set.of());
    assertEquals(List.of(new Row(2, "Noor", "A", "", "en"), new Row(3, "Noor", "B", "", "es")), roster.rows());
  }

  @Test
  void goodRowsComeInAndBadRowsSayLineAndReason() {
    Roster roster = RosterReader.read(List.of(
        "first name,last name\nNoor,Ames\n,Dorn\nKai\nElsie,Fox,extra\nBeto,Cruz\n" + "x".repeat(41) + ",Long\n"), null,
        Set.of());
    assertEquals(List.of("Noor", "Beto"), names(roster));
    assertEquals(List.of(
        "3: A first name was expected here; the place is empty.",
        "4: 2 places were expected, as in the first line; there are 1. Look for a comma or a quote too many or too few.",
        "5: 2 places were expected, as in the first line; there are 3. Look for a comma or a quote too many or too few.",
        "7: A first name of at most 40 characters was expected. Shorten it."), bad(roster));
  }

  @Test
  void aFileInTheShapeOfOneRoster11GivesItsStudentsOfOneClass() {
    String users = USERS_11 + user("1", "true", "student", "Noor", "Ames") + user("2", "true", "student", "Elsie", "Fox")
        + user("3", "true", "teacher", "Ida", "Lind") + user("4", "false", "student", "Kai", "Dorn")
        + user("5", "true", "student", "Beto", "Cruz") + user("1", "true", "student", "Noor", "Ames")
        + ",active,,true,o1,student,u,,Nobody,Here,,,,,,,02,\r\n";
    String enrollments = ENROLLMENTS + "e1,active,,A,s,1,student,,,\r\ne2,active,,A,s,2,student,,,\r\n"
        + "e3,active,,A,s,3,teacher,true,,\r\ne4,active,,A,s,4,student,,,\r\ne5,tobedeleted,,A,s,5,student,,,\r\n";
    Roster roster = RosterReader.read(List.of(enrollments, users), null, Set.of());
    assertEquals(List.of(new Row(2, "Noor", "A", "1", ""), new Row(3, "Elsie", "F", "2", "")), roster.rows());
    assertEquals(List.of("5: Not an enabled user in the file.", "7: This sourcedId stands in line 2 already.",
        "8: sourcedId was expected; the place is empty."), bad(roster));
    assertEquals(List.of("Elsie"), names(RosterReader.read(List.of(enrollments, users), null, Set.of("1"))));
  }

  @Test
  void inTheShapeOfOneRoster12TheRoleStandsInItsOwnFileAndThePreferredNameCounts() {
    String users = "sourcedId,status,dateLastModified,enabledUser,username,userIds,givenName,familyName,middleName,"
        + "identifier,email,sms,phone,agentSourcedIds,grades,password,userMasterIdentifier,resourceSourcedIds,"
        + "preferredGivenName,preferredMiddleName,preferredFamilyName,primaryOrgSourcedId,pronouns,metadata.vendor.x\r\n"
        + "1,,,true,u1,,Elizabeth,Fox,,,,,,,02,,,,Elsie,,,o1,,y\r\n2,,,true,u2,,Ida,Lind,,,,,,,,,,,,,,o1,,y\r\n";
    String roles = "sourcedId,status,dateLastModified,userSourcedId,roleType,role,beginDate,endDate,orgSourcedId,"
        + "userProfileSourcedId\r\nr1,,,1,primary,student,,,o1,\r\nr2,,,2,primary,teacher,,,o1,\r\n";
    Roster roster = RosterReader.read(List.of(users, roles), null, Set.of());
    assertEquals(List.of("Elsie"), names(roster));
    assertEquals(List.of("3: Not a student in the file."), bad(roster));
  }

  @Test
  void withSeveralClassesOneIsAskedFor() {
    String users = USERS_11 + user("1", "true", "student", "Noor", "Ames") + user("2", "true", "student", "Elsie", "Fox");
    String enrollments = ENROLLMENTS + "e1,active,,A,s,1,student,,,\r\ne2,active,,B,s,2,student,,,\r\n";
    String classes = "sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,"
        + "schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods\r\nA,,,Grade 2 Adeyemi,,,,homeroom,,s,t,,,\r\n";
    Roster asked = RosterReader.read(List.of(users, enrollments, classes), null, Set.of());
    assertEquals(List.of(), asked.rows());
    assertEquals(List.of("Grade 2 Adeyemi", "B"), asked.classes().stream().map(each -> each.title()).toList());
    assertEquals(List.of("Elsie"), names(RosterReader.read(List.of(users, enrollments, classes), "B", Set.of())));
  }

  @Test
  void aFormulaGuardIsTakenOffAndABrokenQuoteIsSaid() {
    assertEquals(List.of("-Ana"), names(RosterReader.read(List.of("name\n'-Ana\n"), null, Set.of())));
    Roster broken = RosterReader.read(List.of("name,last\n\"Noor,Ames\nElsie,Fox\n"), null, Set.of());
    assertTrue(broken.rows().size() + broken.bad().size() > 0, "something is said of a broken file");
    assertTrue(broken.bad().stream().map(BadRow::reason).anyMatch(reason -> reason.contains("quote")), bad(broken).toString());
  }

  @Test
  void aHostileFileEndsQuickly() {
    String many = "name\n" + "a\n".repeat(100_000);
    assertEquals(100_000, RosterReader.read(List.of(many), null, Set.of()).rows().size());
    assertTrue(RosterReader.read(List.of("\u0000,\u0001\n".repeat(5_000)), null, Set.of()).rows().isEmpty());
  }
}
