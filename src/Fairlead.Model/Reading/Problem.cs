using System.Globalization;

namespace Fairlead.Model;

/// <summary>A place in a file; lines and columns count from 1.</summary>
public sealed record Location(string File, int Line, int Column)
{
    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");

    /// <summary>The place so many lines further down.</summary>
    internal Location Below(int lines) => lines == 0 ? this : this with { Line = Line + lines };
}

/// <summary>Something wrong with the text of a job.</summary>
/// <param name="Code">A short name of the kind of problem, for example <c>unknown-key</c>.</param>
/// <param name="Location">Where it stands.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Found">What was found.</param>
/// <param name="Expected">What was expected.</param>
/// <param name="Fix">What would mend it; empty when nothing better than the expectation is known.</param>
public sealed record Problem(string Code, Location Location, string Message, string Found = "", string Expected = "", string Fix = "")
{
    /// <inheritdoc/>
    public override string ToString()
    {
        var text = $"{Location}: {Message}";
        text += Found.Length > 0 ? $"; found {Found}" : "";
        text += Expected.Length > 0 ? $"; expected {Expected}" : "";
        return Fix.Length > 0 ? $"{text}; {Fix}" : text;
    }
}

/// <summary>Where each part of a job stands in its files, by model path: <c>change/circuits/C12/from</c>.</summary>
public sealed class SourceMap
{
    private readonly Lazy<Dictionary<string, Location>> places;

    /// <summary>A map of nothing.</summary>
    public SourceMap() => places = new(() => []);

    // Most readings have nothing to tell a place of: the map is made when somebody asks.
    internal SourceMap(Reading.Facts facts) => places = new(facts.Places);

    /// <summary>The place of a path, or of the nearest part above it that has one.</summary>
    public Location? Find(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        for (var at = path; at.Length > 0; at = at[..Math.Max(0, at.LastIndexOf('/'))])
        {
            if (places.Value.TryGetValue(at, out var place))
            {
                return place;
            }
        }

        return null;
    }

    /// <summary>Every path that has a place.</summary>
    public IEnumerable<KeyValuePair<string, Location>> All => places.Value;
}
