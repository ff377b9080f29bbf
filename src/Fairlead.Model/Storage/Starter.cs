using System.Text;

namespace Fairlead.Model.Storage;

/// <summary>A small job to begin with: commented, complete, all of its data invented.</summary>
public static class Starter
{
    private const string Prefix = "Starter/";

    /// <summary>The files of the starter job, schemas included.</summary>
    public static MemoryFiles Files() => new(
    [
        .. Names().Select(name => KeyValuePair.Create(name[Prefix.Length..].Replace('\\', '/'), Content(name))),
        .. Schemas.Write().Select(schema => KeyValuePair.Create("schemas/" + schema.Key, Encoding.UTF8.GetBytes(schema.Value))),
    ]);

    /// <summary>Writes the starter job into a new folder.</summary>
    /// <exception cref="IOException">The folder exists and is not empty.</exception>
    public static void Write(string directory)
    {
        var files = Files();
        SafeWrite.Folder(directory, files.All.Select(path => KeyValuePair.Create(path, files.Read(path))));
    }

    private static IEnumerable<string> Names() => typeof(Starter).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal));

    private static byte[] Content(string name)
    {
        using var stream = typeof(Starter).Assembly.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
