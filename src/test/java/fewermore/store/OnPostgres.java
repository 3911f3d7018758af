package fewermore.store;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/** The tests of this class open their databases on a real PostgreSQL; tests run one after the other. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(OnPostgres.Switch.class)
public @interface OnPostgres {
  /** Turns {@link Stores} round, and back; asked for a nested class too, as often for its end as for its begin. */
  final class Switch implements BeforeAllCallback, AfterAllCallback {
    @Override
    public void beforeAll(ExtensionContext context) {
      Stores.toPostgres();
    }

    @Override
    public void afterAll(ExtensionContext context) {
      Stores.backFromPostgres();
    }
  }
}
