using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Fairlead.Workbench.Routing;

/// <summary>Something that can be asked of a desk.</summary>
/// <param name="Method">GET for what only looks, POST for what changes the desk.</param>
/// <param name="Pattern">The route below the desk: <c>/discipline/{discipline}</c>.</param>
/// <param name="Summary">What it is, as a sentence.</param>
/// <param name="Parameters">What the route and the query may name.</param>
/// <param name="Body">Type of the body; null without one.</param>
/// <param name="Answer">Type of the answer.</param>
public sealed record DeskRoute(string Method, string Pattern, string Summary, ImmutableArray<DeskParameter> Parameters, Type? Body, Type Answer)
{
    /// <summary>Does it; null when what is asked for is not there.</summary>
    internal Func<Desk, DeskAsk, object?> Work { get; init; } = (_, _) => null;
}

/// <summary>A value that a route or its query names.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">Text, a number, or one of the words of an enumeration.</param>
/// <param name="Required">Whether it may not be left out.</param>
public sealed record DeskParameter(string Name, Type Type, bool Required = true)
{
    /// <summary>Whether it stands in the route itself, not in the query.</summary>
    public bool IsIn(string pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return pattern.Contains($"{{{Name}}}", StringComparison.Ordinal);
    }

    /// <exception cref="FormatException">The words are not of the type, or there are none and there must be.</exception>
    internal object? Read(string? words) =>
        words is null ? Required ? throw new FormatException($"'{Name}' is not given.") : null
        : Type == typeof(string) ? words
        : Type.IsEnum ? Enum.TryParse(Type, words, ignoreCase: true, out var word) && Enum.IsDefined(Type, word) ? word : throw Unfit(words, string.Join(", ", Enum.GetNames(Type)))
        : double.TryParse(words, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : throw Unfit(words, "a number");

    private FormatException Unfit(string words, string expected) => new($"'{Name}' is '{words}'; expected {expected}.");
}

/// <summary>What was asked along with a route.</summary>
internal sealed record DeskAsk(IReadOnlyDictionary<string, object?> Values, string Body, CancellationToken Stop)
{
    public T Of<T>(string name) => (T)Values[name]!;

    public double Number(string name, double otherwise) => (double?)Values[name] ?? otherwise;

    /// <exception cref="FormatException">The body is not such JSON.</exception>
    public T Read<T>()
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(Body, DeskRouter.Json) ?? throw new FormatException("The body is empty.");
        }
        catch (JsonException e)
        {
            throw new FormatException("The body cannot be read. " + e.Message, e);
        }
    }
}
