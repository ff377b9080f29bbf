namespace Fairlead.Substantiation;

/// <summary>How far long work has come.</summary>
/// <param name="What">What goes on: "choosing ways".</param>
/// <param name="Done">How many are done, 0 to <paramref name="Of"/>.</param>
/// <param name="Of">How many there are; for a search, the most steps it may take.</param>
/// <param name="Each">What is counted: "circuits".</param>
public readonly record struct WorkDone(string What, int Done, int Of, string Each);

/// <summary>Who watches long work, and asks for its end.</summary>
internal readonly record struct Watch(CancellationToken Stop, IProgress<WorkDone>? Progress = null)
{
    /// <summary>Tells how far the work is, and ends it where that is asked for.</summary>
    /// <exception cref="OperationCanceledException">An end was asked for.</exception>
    public void Tell(string what, int done, int of, string each)
    {
        Progress?.Report(new(what, done, of, each));
        Stop.ThrowIfCancellationRequested();
    }
}
