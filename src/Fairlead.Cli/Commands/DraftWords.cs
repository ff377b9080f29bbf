using System.Globalization;
using System.Text;
using Fairlead.Records;

namespace Fairlead.Cli.Commands;

/// <summary>An entry as a person types it: <c>opened panel/FLOOR-1 fasteners=22</c>.</summary>
internal static class DraftWords
{
    /// <summary>Reads the words of an entry.</summary>
    /// <exception cref="BadInputException">They are no entry.</exception>
    public static Draft Read(string who, IReadOnlyList<string> words)
    {
        if (words.Count < 2)
        {
            throw new BadInputException($"Found '{string.Join(' ', words)}', expected KIND CLASS/ID [name=value ...], as 'opened panel/FLOOR-1 fasteners=22'.");
        }

        if (Kinds.Find(words[0]) is not { } kind)
        {
            throw new BadInputException($"There is no kind of entry '{words[0]}'.{Nearest.Hint(words[0], Kinds.All.Select(k => k.Name), "See 'fairlead log kinds'.")}");
        }

        return new Draft(who, kind.Name, words[1], words.Skip(2).Aggregate(Payload.Empty, (payload, word) => With(payload, kind, word)));
    }

    /// <summary>Splits a line at its spaces; quotation marks keep words together.</summary>
    public static IReadOnlyList<string> Split(string line)
    {
        var (words, word, quoted) = (new List<string>(), new StringBuilder(), false);
        foreach (var c in line + " ")
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ' ' && !quoted)
            {
                words.Add(word.ToString());
                word.Clear();
            }
            else
            {
                word.Append(c);
            }
        }

        return quoted ? throw new BadInputException($"A quotation mark is not closed: {line}") : [.. words.Where(w => w.Length > 0)];
    }

    private static Payload With(Payload payload, EntryKind kind, string word)
    {
        var equals = word.IndexOf('=', StringComparison.Ordinal);
        if (equals < 1)
        {
            throw new BadInputException($"Found '{word}', expected name=value.");
        }

        var (name, value) = (word[..equals], word[(equals + 1)..]);
        if (payload.Names.Contains(name))
        {
            throw new BadInputException($"'{name}' is given twice.");
        }

        return kind.Fields.FirstOrDefault(f => f.Name == name)?.Form switch
        {
            null => throw new BadInputException($"'{kind.Name}' has no field '{name}'.{Nearest.Hint(name, kind.Fields.Select(f => f.Name), $"See 'fairlead log kinds'.")}"),
            FieldForm.Number => double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? payload.With(name, number)
                : throw new BadInputException($"{name}: found '{value}', expected a number."),
            FieldForm.Time => Instant.TryReadAny(value, out var time) ? payload.With(name, time)
                : throw new BadInputException($"{name}: found '{value}', expected a time as 2027-03-31T14:05:00Z."),
            _ => payload.With(name, value),
        };
    }
}
