using System.CommandLine;

namespace Fairlead.Cli.Commands;

/// <summary>Folders that a command fills: what stands there already is never touched.</summary>
internal static class NewFolder
{
    public static Argument<string> Argument() => new("DIR") { Description = "The folder to write; it must be new or empty." };

    /// <exception cref="BadInputException">Something stands there.</exception>
    public static void Require(string directory)
    {
        if (File.Exists(directory))
        {
            throw new BadInputException($"'{directory}' is a file; give a folder that is new or empty. Nothing was written.");
        }

        if (Directory.Exists(directory) && Directory.EnumerateFileSystemEntries(directory).Any())
        {
            throw new BadInputException($"The folder '{directory}' is not empty; give one that is new or empty. Nothing was written.");
        }
    }
}
