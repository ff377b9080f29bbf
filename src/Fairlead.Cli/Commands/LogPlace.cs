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
    private readonly Lazy<Register> register;

    private LogPlace(Job job, string directory, Terminal terminal)
    {
        Job = job;
        file = Path.Combine(directory, FolderFiles.Log);
        database = string.IsNullOrEmpty(terminal.LogDatabase) ? null : terminal.LogDatabase;
        assessment = new(() => terminal.Watch("assessing the change", progress => new Assessor().Assess(job, progress, terminal.Stop)));
        register = new(() => Register.Of(job, Requirements.Of(assessment.Value)));
    }

    public Job Job { get; }

    /// <summary>What follows from the job: worked out when first asked for.</summary>
    public Assessment Assessment => assessment.Value;

    /// <summary>Who and what the log may name, with the derived tasks and tests: worked out when first asked for, so that what only reads the log does not wait for it.</summary>
    public Register Register => register.Value;

    /// <summary>The log of the job in a folder.</summary>
    /// <exception cref="BadInputException">There is no job there, or its text has problems.</exception>
    public static LogPlace Of(Terminal terminal, string directory)
    {
        var read = JobArguments.Load(terminal, directory);
        return new LogPlace(read.Job ?? throw new BadInputException([.. Output.ProblemText.Lines(directory, read.Problems)]), directory, terminal);
    }

    /// <summary>The log of a folder whose text may have problems; null when there is none.</summary>
    public static ILogStore? FindIn(Terminal terminal, string directory) =>
        string.IsNullOrEmpty(terminal.LogDatabase) ? FindFile(Path.Combine(directory, FolderFiles.Log)) : Of(terminal, directory).Open();

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

    /// <summary>Moves the log of a job just unpacked to the database, where that is where logs are kept.</summary>
    public static void Settle(Terminal terminal, string directory)
    {
        var unpackedFile = Path.Combine(directory, FolderFiles.Log);
        if (string.IsNullOrEmpty(terminal.LogDatabase) || !File.Exists(unpackedFile))
        {
            return;
        }

        using (var unpacked = SqliteLogStore.Open(unpackedFile))
        using (var store = Of(terminal, directory).Open())
        {
            store.Fill(ChainCheck.Check(unpacked.Lines(0)).Entries, unpacked.Contents().Select(hash => unpacked.Content(hash)!));
        }

        File.Delete(unpackedFile);
    }

    private static SqliteLogStore? FindFile(string file) => File.Exists(file) ? SqliteLogStore.Open(file) : null;
}
