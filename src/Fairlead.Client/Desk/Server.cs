using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Fairlead.Client.Desk;

/// <summary>What the server answered when it did not do what was asked.</summary>
public sealed class ServerException(HttpStatusCode status, string message, string body = "") : Exception(message)
{
    /// <summary>The status.</summary>
    public HttpStatusCode Status { get; } = status;

    /// <summary>The answer, for those who know its form.</summary>
    public string Body { get; } = body;
}

/// <summary>The API of the server the pages came from.</summary>
public sealed class Server(HttpClient http)
{
    /// <summary>How everything is written.</summary>
    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    /// <summary>Asks for something.</summary>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public Task<T> Get<T>(string route) => Send<T>(new HttpRequestMessage(HttpMethod.Get, route));

    /// <summary>Asks for something to be done.</summary>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public Task<T> Post<T>(string route, object? body = null) => Send<T>(new HttpRequestMessage(HttpMethod.Post, route) { Content = body is null ? null : JsonContent.Create(body, body.GetType(), options: Json) });

    /// <summary>Asks for something to be made otherwise.</summary>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public Task Put(string route, object body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return Send<object>(new HttpRequestMessage(HttpMethod.Put, route) { Content = JsonContent.Create(body, body.GetType(), options: Json) });
    }

    /// <summary>Asks for something to be ended.</summary>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public Task Delete(string route) => Send<object>(new HttpRequestMessage(HttpMethod.Delete, route));

    private async Task<T> Send<T>(HttpRequestMessage request)
    {
        HttpResponseMessage response;
        try
        {
            response = await http.SendAsync(request);
        }
        catch (HttpRequestException e)
        {
            throw new ServerException(HttpStatusCode.ServiceUnavailable, "The server does not answer. " + e.Message);
        }

        using (response)
        {
            var text = await response.Content.ReadAsStringAsync();
            if (!response.IsSuccessStatusCode)
            {
                throw new ServerException(response.StatusCode, Reason(response.StatusCode, text), text);
            }

            return text.Length == 0 ? default! : JsonSerializer.Deserialize<T>(text, Json)!;
        }
    }

    // Problems come as RFC 9457 documents, refusals as a list of reasons.
    private static string Reason(HttpStatusCode status, string text)
    {
        if (status == HttpStatusCode.Unauthorized && text.Length == 0)
        {
            return "You are not signed in any more. Sign in, and do it again.";
        }

        try
        {
            var answer = JsonSerializer.Deserialize<Answer>(text, Json);
            string[] said = [.. answer?.Reasons ?? [], .. answer?.Errors?.Values.SelectMany(e => e) ?? [], .. new[] { answer?.Detail ?? answer?.Title ?? "" }];
            return string.Join(" ", said.Where(s => s.Length > 0)) is { Length: > 0 } words ? words : $"The server answered {(int)status}.";
        }
        catch (JsonException)
        {
            return $"The server answered {(int)status}.";
        }
    }

    private sealed record Answer(string? Title, string? Detail, Dictionary<string, string[]>? Errors, string[]? Reasons);
}
