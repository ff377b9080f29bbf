using System.Runtime.CompilerServices;

namespace Fairlead.Tests.Model;

/// <summary>The demonstration job of the repository.</summary>
internal static class Demo
{
    public static string Folder => Path.Combine(Repository(), "demo", "survey-twin");

    public static string Repository([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
