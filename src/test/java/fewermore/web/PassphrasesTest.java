package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.nulabinc.zxcvbn.StandardDictionaries;
import fewermore.web.teacher.FirstPage;
import java.io.IOException;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PassphrasesTest {
  @Test
  void aNewPassphraseIsLongEnoughNotTooLongAndTheSameTwice() {
    assertEquals(Optional.empty(), Passphrases.problem(Rig.PASSPHRASE, Rig.PASSPHRASE));
    assertTrue(Passphrases.problem("kelp").orElseThrow().contains("8 to 200 characters"));
    assertTrue(Passphrases.problem("k".repeat(201)).isPresent());
    assertTrue(Passphrases.problem("kelp and crab", "kelp and crabs").orElseThrow().contains("not the same"));
  }

  @Test
  void oneThatManyPeopleTakeIsRefusedInUpperCaseToo() {
    assertTrue(Passphrases.problem("password").orElseThrow().contains("anybody would try"));
    assertTrue(Passphrases.problem("BaseBall").isPresent());
    assertEquals(Optional.empty(), Passphrases.problem("baseball on the moon"));
  }

  /** OWASP ASVS 5.0.0, 6.2.4: at least the 3,000 most common that the rules of length let through. */
  @Test
  void theListOfCommonOnesIsLongEnough() throws IOException {
    assertTrue(StandardDictionaries.PASSWORDS_LOADER.load().getRankedDictionary().keySet().stream()
        .filter(each -> each.length() >= FirstPage.SHORTEST).count() >= 3000);
  }
}
