package fewermore.store;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/** A test about the data file itself: on PostgreSQL there is none, and it is passed over. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(OfTheFile.Condition.class)
public @interface OfTheFile {
  /** What of the file. */
  String value();

  /** {@link ExecutionCondition} of this annotation. */
  final class Condition implements ExecutionCondition {
    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
      return Stores.areOnPostgres()
          ? ConditionEvaluationResult.disabled("about the data file, of which PostgreSQL has none")
          : ConditionEvaluationResult.enabled("a data file");
    }
  }
}
