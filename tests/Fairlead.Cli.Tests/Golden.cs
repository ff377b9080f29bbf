using System.Runtime.CompilerServices;

namespace Fairlead.Tests.Cli;

/// <summary>Text that a person has read and approved.</summary>
internal static class Golden
{
    public static void Check(string actual, string name, [CallerFilePath] string testFile = "")
    {
        var approved = Path.Combine(Path.GetDirectoryName(testFile)!, "Golden", name);
        var received = approved + ".received";
        var text = actual.ReplaceLineEndings("\n");
        if (File.Exists(approved) && File.ReadAllText(approved) == text)
        {
            File.Delete(received);
            return;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(approved)!);
        File.WriteAllText(received, text);
        Assert.Fail($"{name} is not what was approved. Read the difference; if the new text is right: mv '{received}' '{approved}'");
    }
}
