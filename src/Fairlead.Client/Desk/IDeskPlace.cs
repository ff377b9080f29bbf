using System.Net;
using System.Text.Json;
using Fairlead.Workbench;
using Fairlead.Workbench.Routing;

namespace Fairlead.Client.Desk;

/// <summary>Where a desk stands: on the server, or in the browser itself. Both answer the same routes alike.</summary>
internal interface IDeskPlace
{
    /// <summary>Asks the desk.</summary>
    /// <param name="method">GET or POST.</param>
    /// <param name="route">The route below the desk.</param>
    /// <param name="body">The body as JSON; empty for none.</param>
    /// <returns>The answer as JSON.</returns>
    /// <exception cref="ServerException">It is refused, or nobody answers.</exception>
    Task<string> Ask(string method, string route, string body);
}

/// <summary>A desk on the server.</summary>
/// <param name="server">The server.</param>
/// <param name="job">The job.</param>
/// <param name="id">The desk's id.</param>
/// <param name="edited">Whether it was opened with edits.</param>
internal sealed class ServerDesk(Server server, string job, string id, bool edited) : IDeskPlace
{
    private bool edited = edited;

    /// <summary>Opens a desk.</summary>
    /// <param name="server">The server.</param>
    /// <param name="job">The job.</param>
    /// <param name="from">The texts it is opened with, as JSON; empty for those that the server has.</param>
    /// <param name="steps">The edits it is opened with, step by step.</param>
    /// <exception cref="ServerException">It is refused, or the server is not there.</exception>
    public static async Task<ServerDesk> Open(Server server, string job, string from, IReadOnlyList<JobEdit[]> steps)
    {
        var body = from.Length == 0 ? "{}" : $"{{\"from\":{from},\"steps\":{JsonSerializer.Serialize([.. steps], DeskJson.Default.JobEditArrayArray)}}}";
        using var answer = JsonDocument.Parse(await server.Ask(HttpMethod.Post, $"api/jobs/{job}/desk", body));
        return new ServerDesk(server, job, answer.RootElement.GetProperty("desk").GetString()!, steps.Count > 0);
    }

    /// <inheritdoc/>
    public async Task<string> Ask(string method, string route, string body)
    {
        // The tablet keeps what is true of the job as it was kept, not of edits that may still be dropped.
        var question = method == "GET" && !edited ? KeptDesk.Question(job, route) : "";
        edited |= method == "POST";
        var answer = await server.Ask(new HttpMethod(method), $"api/desks/{id}/{route}".TrimEnd('/'), body.Length == 0 && method == "POST" ? "[]" : body, question);
        edited &= route != "keep";
        return answer;
    }
}

/// <summary>What the server's desk answered last, as far as the tablet keeps it: enough to look at the job while the server does not answer.</summary>
/// <param name="kept">The answers that are kept.</param>
/// <param name="link">Is told how old they are.</param>
/// <param name="job">The job.</param>
internal sealed class KeptDesk(KeptAnswers kept, Link link, string job) : IDeskPlace
{
    /// <summary>What an answer of a desk is kept as.</summary>
    public static string Question(string job, string route) => $"api/jobs/{job}/desk/{(route.Length == 0 ? "view" : route)}";

    /// <summary>Whether an answer is kept.</summary>
    public async Task<bool> Has(string route) => await kept.Find(Question(job, route)) is not null;

    /// <inheritdoc/>
    public async Task<string> Ask(string method, string route, string body)
    {
        var (at, answer) = (method == "GET" ? await kept.Find(Question(job, route)) : null) ?? throw new ServerException(HttpStatusCode.ServiceUnavailable, "The server does not answer.") { Away = true };
        link.Shown(at);
        return answer;
    }
}

/// <summary>What is asked of a desk, in the words of its types.</summary>
internal static class DeskPlaces
{
    /// <summary>Asks, and reads the answer.</summary>
    public static async Task<T> Ask<T>(this IDeskPlace place, string route, object? body = null)
    {
        var answer = await place.Ask(body is null ? "GET" : "POST", route, body is null ? "" : JsonSerializer.Serialize(body, body.GetType(), Server.Json));
        return JsonSerializer.Deserialize<T>(answer, Server.Json)!;
    }
}
