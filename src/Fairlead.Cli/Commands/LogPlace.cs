using Fairlead.Server.Work;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Records;
using Fairlead.Substantiation;

namespace Fairlead.Cli.Commands;

/// <summary>Where the log of a job is: in <c>log.db</c> of its folder, or in the database that FAIRLEAD_LOG names, under the number of the work order.</summary>
internal sealed class LogPlace
{
    private readonly string file;
    private readonly string? database;
    private readonly Lazy<Assessment> assessment;

    private LogPlace(Job job, string directory, Terminal terminal)
    {
        Job = job;
        file = Path.Combine(directory, FolderFiles.Log);
        database = string.IsNullOrEmpty(terminal.LogDatabase) ? null : terminal.LogDatabase;
        assessment = new(() => terminal.Watch("assessing the change", progress => new Assessor().Assess(job, progress, terminal.Stop)));
        Register = Records.Register.Of(job, () => Requirements.Of(assessment.Value));
    }

    public Job Job { get; }

    /// <summary>What follows from the job: worked out when first asked for.</summary>
    public Assessment Assessment => assessment.Value;

    /// <summary>Who and what the log may name. The derived tasks and tests are worked out when an entry is first held against them.</summary>
    public Register Register { get; }

    /// <summary>The log of the job in a folder.</summary>
    /// <exception cref="BadInputException">There is no job there, or its text has problems.</exception>
    public static LogPlace Of(Terminal terminal, string directory)
    {
        var read = JobArguments.Load(terminal, directory);
        return new LogPlace(read.Job ?? throw new BadInputException([.. Output.ProblemText.Lines(directory, read.Problems)]), directory, terminal);
    }

    /// <summary>The log of a folder whose text may have problems; null when there is none.</summary>
    /// <exception cref="BadInputException">There is no job there.</exception>
    public static ILogStore? FindIn(Terminal terminal, string directory)
    {
        JobArguments.Require(directory);
        return string.IsNullOrEmpty(terminal.LogDatabase) ? FindFile(Path.Combine(directory, FolderFiles.Log)) : Of(terminal, directory).Open();
    }

    /// <summary>Opens the log, and begins it when there is none.</summary>
    public ILogStore Open() => database is null ? SqliteLogStore.Open(file) : PostgresLogStore.Open(database, Job.Order.Number);

    /// <summary>Opens the log if there is one: a question begins no log.</summary>
    public ILogStore? Find() => database is null ? FindFile(file) : Open();

    /// <summary>How things stand; as an empty log when there is none.</summary>
    public HangarState State(TimeProvider clock)
    {
        using var store = Find();
        return store is null ? HangarState.Empty : new LogBook(store, Records.Register.Of(Job), clock).CatchUp();
    }

    /// <summary>Number of entries and root, to be written on what is printed.</summary>
    public Witness Head()
    {
        using var store = Find();
        return ChainCheck.Check(store?.Lines(0) ?? []).Head;
    }

    private static SqliteLogStore? FindFile(string file) => File.Exists(file) ? SqliteLogStore.Open(file) : null;
}
