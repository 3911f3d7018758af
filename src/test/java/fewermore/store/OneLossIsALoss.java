package fewermore.store;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.extension.AfterTestExecutionCallback;
import org.junit.jupiter.api.extension.BeforeTestExecutionCallback;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * A test that failed is run once more, for the sake of browsers. Where work can be lost once in many times that would hide
 * the loss: these tests stay failed.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(OneLossIsALoss.Memory.class)
public @interface OneLossIsALoss {
  /** What failed in this program. */
  final class Memory implements BeforeTestExecutionCallback, AfterTestExecutionCallback {
    private static final Map<String, Throwable> FAILED = new ConcurrentHashMap<>();

    private static String name(ExtensionContext test) {
      return test.getRequiredTestClass().getName() + "." + test.getRequiredTestMethod().getName();
    }

    @Override
    public void beforeTestExecution(ExtensionContext test) {
      Throwable before = FAILED.get(name(test));
      if (before != null) {
        throw new AssertionError("it failed the first time, and that counts: " + before.getMessage(), before);
      }
    }

    @Override
    public void afterTestExecution(ExtensionContext test) {
      test.getExecutionException().ifPresent(problem -> FAILED.putIfAbsent(name(test), problem));
    }
  }
}
