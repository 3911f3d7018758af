package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FamilyPageTest {
  @Test
  void whatIsKeptAsJsonIsALineAFamilyCanRead() {
    assertEquals("equation: 39 − 26 = □; answer: 13; who has the longer bar: Dario; longer bar: 39; tapped as known: 39; tapped as known: 26",
        FamilyPage.plain("""
            {"equation":"39 − 26 = □","answer":"13","label":"","bars":{"longer":"Dario","longerBar":"39","gap":""},
             "reading":{"question":"","known":["39","26"]}}"""));
  }

  @Test
  void otherTextStaysAsItIs() {
    assertEquals("Otter", FamilyPage.plain("Otter"));
    assertEquals("{not JSON", FamilyPage.plain("{not JSON"));
  }
}
