package fewermore.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A browser as far as HTTP sees it: keeps cookies, follows nothing by itself, reads the form token. */
public final class Browser {
  private static final HttpClient CLIENT = HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
  private static final Pattern CSRF = Pattern.compile("name=\"csrf\"[^>]*value=\"([^\"]*)\"");

  private final String origin;
  public final Map<String, String> cookies = new LinkedHashMap<>();
  private String csrf = "";

  public Browser(String origin) {
    this.origin = origin;
  }

  /** The form token of the last page that had one. */
  String token() {
    return csrf;
  }

  public HttpResponse<String> get(String path) {
    return send(request(path).GET());
  }

  /** Posts a form with the token of the last page that had one. */
  public HttpResponse<String> post(String path, Map<String, String> fields) {
    Map<String, String> all = new LinkedHashMap<>(fields);
    all.putIfAbsent("csrf", csrf);
    String body = all.entrySet().stream()
        .map(field -> encode(field.getKey()) + "=" + encode(field.getValue()))
        .collect(Collectors.joining("&"));
    return send(request(path).header("Content-Type", "application/x-www-form-urlencoded")
        .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  /** Posts a form in which one field stands more than once. */
  public HttpResponse<String> post(String path, String field, Iterable<String> values) {
    StringBuilder body = new StringBuilder("csrf=" + encode(csrf));
    values.forEach(value -> body.append('&').append(encode(field)).append('=').append(encode(value)));
    return send(request(path).header("Content-Type", "application/x-www-form-urlencoded")
        .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
  }

  public HttpResponse<String> postJson(String path, String body) {
    return send(request(path).header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  public HttpRequest.Builder request(String path) {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(origin + path)).timeout(Duration.ofSeconds(60));
    if (!cookies.isEmpty()) {
      request.header("Cookie", cookies.entrySet().stream()
          .map(cookie -> cookie.getKey() + "=" + cookie.getValue()).collect(Collectors.joining("; ")));
    }
    return request;
  }

  public HttpResponse<String> send(HttpRequest.Builder request) {
    try {
      HttpResponse<String> response = CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString());
      response.headers().allValues("Set-Cookie").forEach(this::keep);
      Matcher token = CSRF.matcher(response.body());
      if (token.find()) {
        csrf = token.group(1);
      }
      return response;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private void keep(String cookie) {
    String[] pair = cookie.split(";")[0].split("=", 2);
    if (pair[1].isEmpty()) {
      cookies.remove(pair[0]);
    } else {
      cookies.put(pair[0], pair[1]);
    }
  }

  private static String encode(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
