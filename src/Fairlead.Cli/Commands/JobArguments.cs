using System.CommandLine;
using Fairlead.Cli.Output;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Commands;

/// <summary>What the commands on a job have in common: its folder, and the file a result goes to.</summary>
internal static class JobArguments
{
    public static Argument<string> Folder() => new("DIR") { Description = "The folder of the job, which holds job.yaml." };

    public static Option<string> Output(string description, bool required = false) => new("--output", "-o") { Description = description, Required = required, HelpName = "FILE" };

    /// <summary>The files of a job.</summary>
    /// <exception cref="BadInputException">There is no job there.</exception>
    public static FolderFiles Files(string directory)
    {
        Require(directory);
        return new FolderFiles(directory);
    }

    /// <summary>Reads a job.</summary>
    /// <exception cref="BadInputException">There is no job there.</exception>
    public static LoadResult Load(Terminal terminal, string directory)
    {
        Require(directory);
        return terminal.Work("reading the job", () => JobFolder.Load(directory));
    }

    /// <summary>Reads and assesses a job.</summary>
    /// <exception cref="BadInputException">There is no job there, or its text has problems: all of them are listed.</exception>
    public static Assessment Assess(Terminal terminal, string directory) => Assess(terminal, directory, Load(terminal, directory));

    /// <summary>Assesses a job that was read.</summary>
    /// <exception cref="BadInputException">Its text has problems: all of them are listed.</exception>
    public static Assessment Assess(Terminal terminal, string directory, LoadResult read) => read.Job is { } job
        ? terminal.Watch("assessing the change", progress => new Assessor().Assess(job, progress, terminal.Stop))
        : throw new BadInputException([.. ProblemText.Lines(directory, read.Problems)]);

    /// <summary>Writes a file and says so.</summary>
    public static void WriteFile(Terminal terminal, string file, byte[] bytes)
    {
        RequireOutput(file);
        SafeWrite.Bytes(file, bytes);
        terminal.Error.WriteLine($"wrote {file}");
    }

    /// <summary>Refuses a file that a result may not go to.</summary>
    /// <exception cref="BadInputException">It is a folder, or has the name of a job's own file.</exception>
    public static void RequireOutput(string file)
    {
        if (Directory.Exists(file))
        {
            throw new BadInputException($"'{file}' is a folder; name a file.");
        }

        if (Path.GetExtension(file) is ".yaml" or ".yml")
        {
            throw new BadInputException($"'{file}' is the name of a job's own file, which a result never replaces; choose another name.");
        }
    }

    /// <summary>Refuses a place within the job for what holds the whole job: the next copy would hold this one.</summary>
    /// <exception cref="BadInputException">It lies in the job folder.</exception>
    public static void RequireOutside(string directory, string place)
    {
        if ((Followed(place) + Path.DirectorySeparatorChar).StartsWith(Followed(directory) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            throw new BadInputException($"'{place}' lies in the job folder, or leads into it, so the next copy would hold this one; choose a place outside '{directory}'.");
        }
    }

    // Where a path leads when each link on it is followed.
    private static string Followed(string path)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        if (Path.GetDirectoryName(full) is not { } parent)
        {
            return full;
        }

        var here = Path.Combine(Followed(parent), Path.GetFileName(full));
        var target = Directory.Exists(here) ? Directory.ResolveLinkTarget(here, returnFinalTarget: true) : File.Exists(here) ? File.ResolveLinkTarget(here, returnFinalTarget: true) : null;
        return target is null ? here : Followed(target.FullName);
    }

    /// <summary>Refuses a folder in which there is no job, whatever the text of one is like.</summary>
    /// <exception cref="BadInputException">There is none.</exception>
    public static void Require(string directory)
    {
        if (File.Exists(directory))
        {
            throw new BadInputException($"'{directory}' is a file; give the folder of the job, which holds {JobReader.Root}.");
        }

        if (!Directory.Exists(directory))
        {
            throw new BadInputException($"There is no folder '{directory}'. 'fairlead new {Terminal.Quoted(directory)}' writes a job to begin with.");
        }

        if (!File.Exists(Path.Combine(directory, JobReader.Root)))
        {
            throw new BadInputException($"The folder '{directory}' holds no {JobReader.Root}, so it is not a job. 'fairlead new OTHER-DIR' writes a job to begin with.");
        }
    }
}
