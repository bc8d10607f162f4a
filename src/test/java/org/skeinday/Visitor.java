package org.skeinday;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.skeinday.platform.record.Json;

/** Sends what a page of the server would send: a device with its cookie, or the laptop without one. */
public final class Visitor {
    private final HttpClient client;
    private final String root;
    private final String cookie;
    private final SplittableRandom ids;

    /** @param cookie of a device that has joined; empty for the laptop itself */
    public Visitor(int port, String cookie, long seed) {
        this(client(), port, cookie, seed);
    }

    /** The same from another address than the laptop's own: whoever asks there has joined, or is nobody. */
    public static Visitor from(String address, int port, String cookie, long seed) {
        return new Visitor(client(), "http://" + address + ":" + port, cookie, seed);
    }

    /** One of many that share their connections: a client of its own has threads of its own. */
    public Visitor(HttpClient client, int port, String cookie, long seed) {
        this(client, "http://localhost:" + port, cookie, seed);
    }

    private Visitor(HttpClient client, String root, String cookie, long seed) {
        this.client = client;
        this.root = root;
        this.cookie = cookie;
        this.ids = new SplittableRandom(seed);
    }

    public static HttpClient client() {
        return HttpClient.newBuilder()
                .connectTimeout(Duration.ofSeconds(5))
                .version(HttpClient.Version.HTTP_1_1)
                .build();
    }

    /** A new act's id. */
    public String newId() {
        return String.format("%016x%016x", ids.nextLong(), ids.nextLong());
    }

    public HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(request(path).GET().build());
    }

    public HttpResponse<String> get(String path, String header, String value) throws IOException, InterruptedException {
        return send(request(path).header(header, value).GET().build());
    }

    /** What is there, to the byte. */
    public byte[] bytes(String path) throws IOException, InterruptedException {
        return client.send(request(path).GET().build(), HttpResponse.BodyHandlers.ofByteArray())
                .body();
    }

    /** Posts a form as htmx does, with a new act id unless the fields bring one. */
    public HttpResponse<String> form(String path, Map<String, String> fields) throws IOException, InterruptedException {
        String act = fields.containsKey("act") ? "" : "act=" + newId() + "&";
        return sent(
                path,
                act
                        + fields.entrySet().stream()
                                .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                                .collect(Collectors.joining("&")));
    }

    /** The same with a body as it is, in which a name may come more than once. */
    public HttpResponse<String> formBody(String path, String body) throws IOException, InterruptedException {
        return sent(path, "act=" + newId() + "&" + body);
    }

    /** Sends a file as a form with files does. */
    public HttpResponse<String> upload(String path, String fileName, byte[] bytes, Map<String, String> fields)
            throws IOException, InterruptedException {
        String boundary = "skeinday" + newId();
        var body = new java.io.ByteArrayOutputStream();
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.putIfAbsent("act", newId());
        for (Map.Entry<String, String> field : all.entrySet()) {
            body.write(("--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + field.getKey() + "\"\r\n\r\n"
                            + field.getValue() + "\r\n")
                    .getBytes(StandardCharsets.UTF_8));
        }
        body.write(("--" + boundary + "\r\nContent-Disposition: form-data; name=\"files\"; filename=\"" + fileName
                        + "\"\r\nContent-Type: application/octet-stream\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8));
        body.write(bytes);
        body.write(("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8));
        return send(request(path)
                .header("HX-Request", "true")
                .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray()))
                .build());
    }

    private HttpResponse<String> sent(String path, String body) throws IOException, InterruptedException {
        return send(request(path)
                .header("HX-Request", "true")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build());
    }

    /** The texts of an archive that the server gives, by file name. */
    public Map<String, String> zip(String path) throws IOException, InterruptedException {
        return unzipped(bytes(path));
    }

    public static Map<String, String> unzipped(byte[] archive) throws IOException {
        Map<String, String> texts = new LinkedHashMap<>();
        try (var zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (ZipEntry file = zip.getNextEntry(); file != null; file = zip.getNextEntry()) {
                texts.put(file.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return texts;
    }

    /** A tap as an outbox keeps it. */
    public static ObjectNode tap(String id, String kind, ObjectNode content) {
        ObjectNode tap = Json.MAPPER.createObjectNode();
        tap.put("id", id).put("kind", kind).put("at", "2026-05-09T08:00:00Z").set("content", content);
        return tap;
    }

    /** Sends one tap and gives its answer. */
    public JsonNode tap(String kind, ObjectNode content) throws IOException, InterruptedException {
        return tapAs(newId(), kind, content);
    }

    /** The same under an id that is known beforehand. */
    public JsonNode tapAs(String id, String kind, ObjectNode content) throws IOException, InterruptedException {
        return taps(Json.MAPPER.createArrayNode().add(tap(id, kind, content))).path(0);
    }

    /** Sends taps and gives the answers, one for each. */
    public JsonNode taps(ArrayNode taps) throws IOException, InterruptedException {
        ObjectNode body = Json.MAPPER.createObjectNode();
        body.set("taps", taps);
        HttpResponse<String> answer = post("/taps", body.toString());
        if (answer.statusCode() != 200) {
            throw new IOException("taps: " + answer.statusCode() + " " + answer.body());
        }
        return Json.MAPPER.readTree(answer.body()).path("answers");
    }

    /** Posts JSON as the pages' scripts do. */
    public HttpResponse<String> post(String path, String json) throws IOException, InterruptedException {
        return send(request(path)
                .header("X-Skeinday", "1")
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(json))
                .build());
    }

    /** With any method and headers, and nothing that our own pages add. @param headers names and values in turn */
    public HttpResponse<String> bare(String method, String path, String body, String... headers)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(root + path))
                .timeout(Duration.ofSeconds(15))
                .method(method, HttpRequest.BodyPublishers.ofString(body));
        for (int i = 0; i + 1 < headers.length; i += 2) {
            request.header(headers[i], headers[i + 1]);
        }
        return send(
                cookie.isEmpty()
                        ? request.build()
                        : request.header("Cookie", cookie).build());
    }

    /** Where its pages are from. */
    public String root() {
        return root;
    }

    private HttpRequest.Builder request(String path) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(root + path))
                .timeout(Duration.ofSeconds(15))
                .header("Origin", root);
        return cookie.isEmpty() ? request : request.header("Cookie", cookie);
    }

    private HttpResponse<String> send(HttpRequest request) throws IOException, InterruptedException {
        return client.send(request, HttpResponse.BodyHandlers.ofString());
    }
}
