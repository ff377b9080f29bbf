using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Fairlead.Cli;

namespace Fairlead.Tests.Cli;

/// <summary><c>fairlead serve</c> from its start to its end.</summary>
public sealed class ServeTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    [Fact]
    public async Task It_says_where_it_is_answers_there_and_ends_when_it_is_stopped()
    {
        using var place = new Workshop();
        using var stop = new CancellationTokenSource();
        using var told = new Told();
        var run = Task.Run(() => FairleadApp.Run(["serve", "--data", place["data"], "--port", "0"], new Terminal(told, TextWriter.Null) { Stop = stop.Token }), CancellationToken.None);
        var line = await told.First.WaitAsync(Patience, TestContext.Current.CancellationToken);
        using var browser = new HttpClient { BaseAddress = new Uri(line.Split(' ')[^1]) };
        Assert.Equal("Healthy", await browser.GetStringAsync("/health", TestContext.Current.CancellationToken));
        Assert.Equal("[]", await browser.GetStringAsync("/api/jobs", TestContext.Current.CancellationToken));
        await stop.CancelAsync();
        Assert.Equal(ExitCode.Holds, await run.WaitAsync(Patience, TestContext.Current.CancellationToken));
        await Assert.ThrowsAsync<HttpRequestException>(() => browser.GetStringAsync("/health", TestContext.Current.CancellationToken));
    }

    [Fact]
    public void A_port_that_another_program_serves_is_told_in_plain_words()
    {
        using var place = new Workshop();
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port.ToString(CultureInfo.InvariantCulture);
        var ran = CommandLine.Run("serve", "--data", place["data"], "--port", port);
        Assert.Equal(ExitCode.BadInput, ran.Code);
        Assert.Contains($"Port {port} cannot be served: another program", ran.Error, StringComparison.Ordinal);
        Assert.Contains("--port", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_that_is_no_port_is_refused() =>
        Assert.Contains("from 0 to 65535", CommandLine.Run("serve", "--port", "70000").Error, StringComparison.Ordinal);

    /// <summary>Where the command tells; its first line can be awaited.</summary>
    private sealed class Told : StringWriter
    {
        private readonly TaskCompletionSource<string> first = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Told()
            : base(CultureInfo.InvariantCulture)
        {
        }

        public Task<string> First => first.Task;

        public override void WriteLine(string? value)
        {
            base.WriteLine(value);
            first.TrySetResult(value ?? "");
        }
    }
}
