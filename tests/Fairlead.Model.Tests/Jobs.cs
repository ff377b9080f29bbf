using System.Text;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Model;

/// <summary>The starter job with edits, in memory.</summary>
internal static class Jobs
{
    public static SortedDictionary<string, byte[]> Starting()
    {
        var files = Starter.Files();
        return new(files.All.Where(f => f.EndsWith(".yaml", StringComparison.Ordinal)).ToDictionary(f => f, files.Read, StringComparer.Ordinal), StringComparer.Ordinal);
    }

    public static LoadResult Load(IEnumerable<KeyValuePair<string, byte[]>> files) => JobReader.Read(new MemoryFiles(files));

    /// <summary>Reads the starter job with one file in place of its own.</summary>
    public static LoadResult With(string file, byte[] contents)
    {
        var files = Starting();
        files[file] = contents;
        return Load(files);
    }

    public static LoadResult With(string file, string contents) => With(file, Encoding.UTF8.GetBytes(contents));

    public static string Text(string file) => Encoding.UTF8.GetString(Starting()[file]);

    /// <summary>The text of a file with one passage, which stands in it once, replaced.</summary>
    public static string Replaced(string text, string good, string bad)
    {
        Assert.Equal(2, text.Split(good).Length);
        return text.Replace(good, bad, StringComparison.Ordinal);
    }

    public static string[] Lines(LoadResult result) => [.. result.Problems.Select(p => p.ToString())];
}
