using System.Collections.Immutable;

namespace Fairlead.Model.Editing;

/// <summary>What a step changed: of each file only the stretch that differs, so that many steps can be kept of a large job.</summary>
public sealed class TextStep
{
    private readonly ImmutableArray<Difference> differences;

    private TextStep(ImmutableArray<Difference> differences) => this.differences = differences;

    /// <summary>The step from some texts to others.</summary>
    public static TextStep Between(JobTexts before, JobTexts after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var names = before.Files.Keys.Union(after.Files.Keys, StringComparer.Ordinal);
        return new TextStep([.. names.Select(f => Between(f, before.Files.GetValueOrDefault(f), after.Files.GetValueOrDefault(f))).OfType<Difference>()]);
    }

    /// <summary>How many characters it keeps.</summary>
    public long Length => differences.Sum(d => (long)(d.Was?.Length ?? 0) + (d.Is?.Length ?? 0));

    /// <summary>The texts from which the step led to these.</summary>
    public JobTexts Back(JobTexts after) => differences.Aggregate(after, (texts, s) => s.Put(texts, s.Is, s.Was));

    /// <summary>The texts to which the step leads from these.</summary>
    public JobTexts Forth(JobTexts before) => differences.Aggregate(before, (texts, s) => s.Put(texts, s.Was, s.Is));

    private static Difference? Between(string file, string? was, string? now)
    {
        if (was == now)
        {
            return null;
        }

        if (was is null || now is null)
        {
            return new Difference(file, 0, was, now);
        }

        var head = was.AsSpan().CommonPrefixLength(now);
        var tail = 0;
        while (tail < Math.Min(was.Length, now.Length) - head && was[^(tail + 1)] == now[^(tail + 1)])
        {
            tail++;
        }

        return new Difference(file, head, was[head..^tail], now[head..^tail]);
    }

    // What stood there and what stands there now; null where there is no such file.
    private sealed record Difference(string File, int At, string? Was, string? Is)
    {
        public JobTexts Put(JobTexts texts, string? from, string? to)
        {
            ArgumentNullException.ThrowIfNull(texts);
            var text = texts.Files.GetValueOrDefault(File, "");
            return to is null ? texts.Without(File) : texts.Replace(File, string.Concat(text.AsSpan(0, At), to, text.AsSpan(At + (from ?? "").Length)));
        }
    }
}
