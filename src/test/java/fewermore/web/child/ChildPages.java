package fewermore.web.child;

import java.util.Locale;
import java.util.Map;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.context.Context;
import org.thymeleaf.context.ITemplateContext;
import org.thymeleaf.messageresolver.AbstractMessageResolver;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;

/** Renders a child's pages for tests, with nothing of a server around them. */
final class ChildPages {
  private final TemplateEngine engine = new TemplateEngine();

  ChildPages() {
    var templates = new ClassLoaderTemplateResolver();
    templates.setPrefix("pages/");
    templates.setSuffix(".html");
    templates.setCharacterEncoding("UTF-8");
    engine.setTemplateResolver(templates);
    engine.setMessageResolver(new AbstractMessageResolver() {
      @Override
      public String resolveMessage(ITemplateContext context, Class<?> origin, String key, Object[] values) {
        return ChildTexts.in(context.getLocale().toLanguageTag()).of(key, values == null ? new Object[0] : values);
      }

      @Override
      public String createAbsentMessageRepresentation(
          ITemplateContext context, Class<?> origin, String key, Object[] values) {
        throw new IllegalStateException("no text for " + key);
      }
    });
  }

  String render(String template, String language, Object page) {
    return engine.process(template, new Context(Locale.forLanguageTag(language),
        Map.of("page", page, "asset", new Assets(), "csrf", "a-token")));
  }

  /** The addresses of static files, not yet named by content. */
  public static final class Assets {
    public String of(String name) {
      return "/static/" + name;
    }
  }
}
