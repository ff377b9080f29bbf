using System.Text;
using CsCheck;
using Fairlead.Model;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Model;

/// <summary>Jobs damaged at random: the reader gives a whole job or says what is wrong and where, and never fails itself.</summary>
public sealed class MutationTests
{
    private static readonly string[] Scraps =
    [
        "\t", " ", "\n", "\r", "\0", ":", ": ", "- ", "-", "[", "]", "{", "}", ",", "#", "&a ", "*a", "!", "!!int ", "|\n", ">\n", "'", "\"", "\\", "%", "@", "`", "?", "? ", "---\n", "...\n", "<<: ",
        "\uFEFF", "\u0085", "\u2028", "\u001b", "é", "∞", "\"\\U00110000\"", "\"\\ud800\"", "~", "null", "NaN", "1e308 kg", "-1", "99999999999999999999", "12 A A", "1,5 m", "0 in", "-3 ft", "auto", "N1", "A1 P1-1", "yes",
    ];

    internal sealed record Damage(int Kind, double Where, double Other, int Scrap, byte Byte);

    internal static readonly Gen<Damage> OneDamage = Gen.Select(Gen.Int[0, 9], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[0, Scraps.Length - 1], Gen.Byte)
        .Select((kind, where, other, scrap, value) => new Damage(kind, where, other, scrap, value));

    [Fact]
    public void A_damaged_starter_job_is_read_whole_or_its_problems_are_told() => Hold(Jobs.Starting(), iterations: 2000, "0N0XIzNsQ0O2");

    [Fact]
    public void A_damaged_demonstration_job_is_read_whole_or_its_problems_are_told()
    {
        var files = new FolderFiles(Demo.Folder);
        Hold(new(files.All.ToDictionary(f => f, files.Read), StringComparer.Ordinal), iterations: 150, "0N0XIzNsQ0O3");
    }

    private static void Hold(SortedDictionary<string, byte[]> files, int iterations, string seed)
    {
        var names = files.Keys.ToArray();
        var (whole, refused) = (0, 0);
        Gen.Select(Gen.Int[0, names.Length - 1], OneDamage.Array[1, 3]).Sample(
            (file, damages) =>
            {
                var copy = new SortedDictionary<string, byte[]>(files, StringComparer.Ordinal) { [names[file]] = damages.Aggregate(files[names[file]], Damaged) };
                var result = Jobs.Load(copy);
                if (result.Job is { } job)
                {
                    Interlocked.Increment(ref whole);
                    Assert.Empty(result.Problems);
                    Whole(job.Order);
                    Whole(job.Aircraft);
                    Whole(job.Parts);
                    Whole(job.Change);
                }
                else
                {
                    Interlocked.Increment(ref refused);
                    Assert.NotEmpty(result.Problems);
                    Assert.All(result.Problems, p => Told(p, copy));
                }
            },
            iter: iterations, seed: seed);
        Assert.True(whole > iterations / 50 && refused > iterations / 4, $"{whole} read and {refused} refused: the damage is too great or too small to tell anything");
    }

    private static void Told(Problem problem, SortedDictionary<string, byte[]> files)
    {
        Assert.True(files.TryGetValue(problem.Location.File, out var bytes), problem.ToString());
        var lines = 1 + Encoding.Latin1.GetString(bytes!).Count(c => c is '\n' or '\r') + Encoding.UTF8.GetString(bytes!).Count(c => c is '\u0085' or '\u2028');
        Assert.InRange(problem.Location.Line, 1, lines + 1);
        Assert.True(problem.Location.Column >= 1, problem.ToString());
        Assert.NotEmpty(problem.Code);
        Assert.NotEmpty(problem.Message);
        Assert.DoesNotContain(problem.ToString(), char.IsControl);
    }

    // Nothing that must be there is missing, at any depth.
    private static void Whole(object record)
    {
        foreach (var field in RecordShape.Of(record.GetType()).Fields)
        {
            var value = record.GetType().GetProperty(Property(record.GetType(), field.Key))!.GetValue(record);
            Assert.True(value is not null || !(field.Required || RecordShape.IsCatalog(field.Type)), $"{record.GetType().Name}.{field.Key} is missing");
            if (RecordShape.IsRecord(Records.Item(field.Type)) && value is not null)
            {
                foreach (var item in value is System.Collections.IEnumerable many ? many.Cast<object>() : [value])
                {
                    Whole(item);
                }
            }
        }
    }

    private static string Property(Type type, string key) => type.GetProperties().Single(p => Calculations.Words.Kebab(p.Name) == key).Name;

    internal static byte[] Damaged(byte[] bytes, Damage damage)
    {
        if (damage.Kind is 0 or 1)
        {
            var at = (int)(damage.Where * bytes.Length);
            return damage.Kind == 0 ? bytes[..at] : [.. bytes[..at], damage.Byte, .. bytes[at..]];
        }

        var lines = Encoding.UTF8.GetString(bytes).Split('\n').ToList();
        var line = (int)(damage.Where * (lines.Count - 1));
        var other = (int)(damage.Other * (lines.Count - 1));
        var words = lines[line].Split(' ');
        var word = (int)(damage.Other * (words.Length - 1));
        switch (damage.Kind)
        {
            case 2: lines.RemoveAt(line); break;
            case 3: lines.Insert(other, lines[line]); break;
            case 4: (lines[line], lines[other]) = (lines[other], lines[line]); break;
            case 5: lines[line] = new string(' ', damage.Scrap % 7) + lines[line].TrimStart(); break;
            case 6: words[word] = Scraps[damage.Scrap]; lines[line] = string.Join(' ', words); break;
            case 7: (words[word], words[^1]) = (words[^1], words[word]); lines[line] = string.Join(' ', words); break;
            case 8: words[word] = lines[other].Trim().Split(' ')[^1]; lines[line] = string.Join(' ', words); break;
            default: lines[line] = lines[line].Insert((int)(damage.Other * lines[line].Length), Scraps[damage.Scrap]); break;
        }

        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }
}
