using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Fairlead.Workbench.Routing;
using Fairlead.Workbench.Views;

namespace Fairlead.Client.Desk;

/// <summary>What the server answered when it did not do what was asked.</summary>
public sealed class ServerException(HttpStatusCode status, string message, string body = "") : Exception(message)
{
    /// <summary>The status.</summary>
    public HttpStatusCode Status { get; } = status;

    /// <summary>The answer, for those who know its form.</summary>
    public string Body { get; } = body;

    /// <summary>Whether there was no answer at all: what was asked may have been done or not.</summary>
    public bool Away { get; init; }
}

/// <summary>A file as the server wrote it.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Type">What it is.</param>
/// <param name="Bytes">Its bytes.</param>
public sealed record WrittenFile(string Name, string Type, byte[] Bytes);

/// <summary>The API of the server the pages came from. When it does not answer, what it answered last is given instead, where that is kept.</summary>
public sealed class Server(HttpClient http, KeptAnswers kept, Link link)
{
    // Where something kept can be shown instead, nobody waits for a network that swallows what is sent.
    private static readonly TimeSpan Short = TimeSpan.FromSeconds(5), Long = TimeSpan.FromSeconds(20);

    /// <summary>How everything is written.</summary>
    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter() },
        TypeInfoResolver = JsonTypeInfoResolver.Combine(DeskJson.Default, WorkJson.Default, new DefaultJsonTypeInfoResolver()),
    };

    /// <summary>Asks for something.</summary>
    /// <param name="route">The route.</param>
    /// <param name="question">What the answer is kept as, where the route itself does not last.</param>
    /// <exception cref="ServerException">It is refused, or the server is not there and nothing is kept.</exception>
    public async Task<T> Get<T>(string route, string question = "")
    {
        ArgumentNullException.ThrowIfNull(question);
        question = question.Length > 0 ? question : route;
        var keeps = KeptAnswers.Keeps(question);
        try
        {
            var answer = await Text(new HttpRequestMessage(HttpMethod.Get, route), keeps ? link.Away ? Short : Long : Timeout.InfiniteTimeSpan);
            var read = Read<T>(answer);
            if (keeps)
            {
                await kept.Keep(question, answer);
            }

            return read;
        }
        catch (ServerException e) when (e.Away && keeps)
        {
            if (await kept.Find(question) is not { } found)
            {
                throw;
            }

            link.Shown(found.At);
            return Read<T>(found.Answer);
        }
    }

    /// <summary>Asks for something anew and keeps the answer; nothing kept stands in for it.</summary>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public async Task Fresh(string route) => await kept.Keep(route, await Text(new HttpRequestMessage(HttpMethod.Get, route), Timeout.InfiniteTimeSpan));

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

    /// <summary>Asks for a file, for as long as it takes to write it.</summary>
    /// <exception cref="ServerException">It is refused, given up, or the server is not there.</exception>
    public async Task<WrittenFile> File(string route, CancellationToken stop)
    {
        try
        {
            using var response = await http.GetAsync(new Uri(route, UriKind.Relative), stop);
            link.Answered(response.Headers.Date);
            var content = response.Content;
            return response.IsSuccessStatusCode
                ? new WrittenFile(content.Headers.ContentDisposition?.FileName?.Trim('"') ?? "file", content.Headers.ContentType?.ToString() ?? "", await content.ReadAsByteArrayAsync(stop))
                : throw new ServerException(response.StatusCode, Reason(response.StatusCode, await content.ReadAsStringAsync(stop)));
        }
        catch (OperationCanceledException e)
        {
            throw new ServerException(HttpStatusCode.RequestTimeout, e.Message);
        }
        catch (HttpRequestException e)
        {
            link.Missed();
            throw Silent(e);
        }
    }

    /// <summary>Sends a file as it is.</summary>
    /// <param name="method">The method.</param>
    /// <param name="route">The route.</param>
    /// <param name="type">What the file is.</param>
    /// <param name="file">Its bytes.</param>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public Task<T> File<T>(HttpMethod method, string route, string type, byte[] file) => Send<T>(new HttpRequestMessage(method, route) { Content = new ByteArrayContent(file) { Headers = { { "Content-Type", type } } } });

    /// <summary>Asks for something to be ended.</summary>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public Task Delete(string route) => Send<object>(new HttpRequestMessage(HttpMethod.Delete, route));

    /// <summary>Asks for something that is passed on as it comes.</summary>
    /// <param name="method">The method.</param>
    /// <param name="route">The route.</param>
    /// <param name="body">The body as JSON; empty for none.</param>
    /// <param name="question">What the answer is kept as; empty when it is not.</param>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    internal async Task<string> Ask(HttpMethod method, string route, string body, string question = "")
    {
        var answer = await Text(new HttpRequestMessage(method, route) { Content = body.Length == 0 ? null : new StringContent(body, Encoding.UTF8, "application/json") }, link.Away ? Short : Long);
        if (question.Length > 0 && KeptAnswers.Keeps(question))
        {
            await kept.Keep(question, answer);
        }

        return answer;
    }

    private static T Read<T>(string text)
    {
        try
        {
            return text.Length == 0 ? default! : JsonSerializer.Deserialize<T>(text, Json)!;
        }
        catch (JsonException e)
        {
            throw new ServerException(HttpStatusCode.BadGateway, "The answer of the server cannot be read: perhaps these pages are of another version. Load them again. " + e.Message);
        }
    }

    private async Task<T> Send<T>(HttpRequestMessage request) => Read<T>(await Text(request, Timeout.InfiniteTimeSpan));

    private async Task<string> Text(HttpRequestMessage request, TimeSpan patience)
    {
        using var stop = new CancellationTokenSource(patience);
        try
        {
            using var response = await http.SendAsync(request, stop.Token);
            var text = await response.Content.ReadAsStringAsync(stop.Token);
            if (response.IsSuccessStatusCode && text.Length > 0 && response.Content.Headers.ContentType?.MediaType != "application/json")
            {
                // As the page of a hotel's network does, which answers whatever is asked.
                throw new HttpRequestException("Something else answers in its place.");
            }

            link.Answered(response.Headers.Date);
            return response.IsSuccessStatusCode ? text : throw new ServerException(response.StatusCode, Reason(response.StatusCode, text), text);
        }
        catch (Exception e) when (e is HttpRequestException or OperationCanceledException)
        {
            link.Missed();
            throw Silent(e);
        }
    }

    private static ServerException Silent(Exception e) => new(HttpStatusCode.ServiceUnavailable, "The server does not answer. " + e.Message) { Away = true };

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
