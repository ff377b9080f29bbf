using System.Text;
using Fairlead.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var stop = new CancellationTokenSource();
var (stopped, insisted) = (new TaskCompletionSource(), new TaskCompletionSource());

// The first Ctrl-C asks for an end between two steps; a run that does not come to one in a second is left where it stands.
// A server first answers what it was asked. The second Ctrl-C waits for nothing.
var patience = TimeSpan.FromSeconds(args is ["serve" or "demo", ..] ? 35 : 1);
Console.CancelKeyPress += (_, e) =>
{
    e.Cancel = true;
    (stop.IsCancellationRequested ? insisted : stopped).TrySetResult();
    stop.Cancel();
};

var run = Task.Run(() => FairleadApp.Run(args, Terminal.Console(stop.Token)));
if (await Task.WhenAny(run, stopped.Task) != run)
{
    await Task.WhenAny(run, insisted.Task, Task.Delay(patience));
}

return run.IsCompleted ? await run : ExitCode.Stopped;
