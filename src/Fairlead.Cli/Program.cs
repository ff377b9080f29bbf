using System.Text;
using Fairlead.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var stop = new CancellationTokenSource();
var stopped = new TaskCompletionSource();

// The first Ctrl-C asks for an end between two steps; a run that does not come to one in a second is left where it stands.
Console.CancelKeyPress += (_, e) =>
{
    e.Cancel = true;
    stop.Cancel();
    stopped.TrySetResult();
};

var run = Task.Run(() => FairleadApp.Run(args, Terminal.Console(stop.Token)));
if (await Task.WhenAny(run, stopped.Task) != run)
{
    await Task.WhenAny(run, Task.Delay(TimeSpan.FromSeconds(1)));
}

return run.IsCompleted ? await run : ExitCode.Stopped;
