using System.Globalization;
using System.IO.Enumeration;

namespace Fairlead.Model.Storage;

/// <summary>Paths within a job folder: relative, with '/', the same file on every system and never outside the folder.</summary>
internal static class JobPath
{
    private const int Longest = 200;

    // Names that stand for devices on some systems, whatever their ending.
    private static readonly string[] Devices = ["con", "prn", "aux", "nul", .. Numbered("com"), .. Numbered("lpt")];

    public static bool IsValid(string path) =>
        path.Length <= Longest && !path.Any(c => "\\:*?\"<>|".Contains(c, StringComparison.Ordinal) || char.IsControl(c) || c == '\uFFFD') && path.Split('/').All(IsName);

    /// <exception cref="ArgumentException">The path leaves the folder.</exception>
    public static void Require(string path)
    {
        if (!IsValid(path))
        {
            throw new ArgumentException($"'{path}' cannot stand in a job folder.", nameof(path));
        }
    }

    /// <summary>Whether a path is one that a pattern names: '*' stands for any letters between two '/'.</summary>
    public static bool Matches(string path, string pattern)
    {
        var (names, patterns) = (path.Split('/'), pattern.Split('/'));
        return pattern.Length <= Longest && names.Length == patterns.Length && names.Zip(patterns).All(p => FileSystemName.MatchesSimpleExpression(p.Second, p.First, ignoreCase: false));
    }

    /// <summary>Checks that files can stand together in a folder on every system, within the limits of a job.</summary>
    /// <exception cref="InvalidDataException">They cannot.</exception>
    public static void RequireFolder(IEnumerable<string> paths, int most = Limits.Files)
    {
        var files = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var folders = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var path in paths)
        {
            if (!IsValid(path))
            {
                throw new InvalidDataException($"The file '{path}' cannot stand in a job folder: names are relative, have up to {Longest.ToString(CultureInfo.InvariantCulture)} characters that every system allows, and do not begin or end with a dot.");
            }

            if (!files.Add(path))
            {
                throw new InvalidDataException($"The file '{path}' stands twice, or differs from another only in capitals.");
            }

            for (var slash = path.IndexOf('/', StringComparison.Ordinal); slash >= 0; slash = path.IndexOf('/', slash + 1))
            {
                folders.Add(path[..slash]);
            }
        }

        if (files.FirstOrDefault(folders.Contains) is { } both)
        {
            throw new InvalidDataException($"'{both}' is a file and a folder.");
        }

        if (files.Count > most)
        {
            throw new InvalidDataException($"There are more than {most.ToString(CultureInfo.InvariantCulture)} files.");
        }
    }

    // Hidden files are no part of a job; a dot or space at the end is dropped by some systems.
    private static bool IsName(string name) =>
        name.Length > 0 && name[0] is not ('.' or ' ') && name[^1] is not ('.' or ' ') && !Devices.Contains(name.Split('.')[0], StringComparer.OrdinalIgnoreCase);

    private static IEnumerable<string> Numbered(string device) => Enumerable.Range(1, 9).Select(n => device + n.ToString(CultureInfo.InvariantCulture));
}
