using System.Diagnostics;
using System.Runtime.CompilerServices;
using Fairlead.Cli;

namespace Fairlead.Tests.Cli;

public sealed class AppTests
{
    private static readonly string[] Commands = [.. FairleadApp.CommandNames];

    [Fact]
    public void Help_has_one_line_for_each_command()
    {
        foreach (var ran in new[] { CommandLine.Run("--help"), CommandLine.Run() })
        {
            Assert.Equal(0, ran.Code);
            Assert.Empty(ran.Error);
            Assert.All(Commands, c => Assert.Single(ran.Out.Split('\n'), l => l.StartsWith($"  {c} ", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void Each_command_has_help_and_refuses_what_it_does_not_know()
    {
        Assert.All(Commands, c => Assert.Equal(0, CommandLine.Run(c, "--help").Code));
        Assert.All(Commands, c =>
        {
            var ran = CommandLine.Run(c, "--nonsense");
            Assert.Equal(2, ran.Code);
            Assert.Contains("There is no option '--nonsense'", ran.Error);
        });
    }

    [Theory]
    [InlineData("chekc", "'check'")]
    [InlineData("sheets", "'sheet'")]
    [InlineData("zzzzzz", "fairlead --help")]
    public void An_unknown_command_gets_the_nearest(string typed, string hint)
    {
        var ran = CommandLine.Run(typed);
        Assert.Equal(2, ran.Code);
        Assert.Contains(hint, ran.Error);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("pack")]
    [InlineData("export")]
    [InlineData("import")]
    [InlineData("new")]
    [InlineData("sheet")]
    public void What_is_missing_is_said(string command)
    {
        var ran = CommandLine.Run(command);
        Assert.Equal(2, ran.Code);
        Assert.Contains($"See 'fairlead {command} --help'.", ran.Error);
    }

    [Fact]
    public void The_version_is_a_version() => Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+\n$", CommandLine.Run("--version").Out.ReplaceLineEndings("\n"));

    [Fact]
    public void An_error_of_our_own_gives_three_in_one_line_and_the_trace_when_asked()
    {
        var broken = new Terminal(new Broken(), TextWriter.Null);
        Assert.Equal(3, FairleadApp.Run(["calc"], broken));
        using var error = new StringWriter();
        FairleadApp.Run(["calc"], broken with { Error = error });
        Assert.Single(error.ToString().Trim().Split('\n'));
        Assert.Contains("FAIRLEAD_DEBUG=1", error.ToString());
        FairleadApp.Run(["calc"], broken with { Error = error, Trace = true });
        Assert.Contains("   at ", error.ToString());
    }

    [Fact]
    public void A_stop_ends_the_run_before_anything_is_written()
    {
        using var workshop = new Workshop();
        var job = workshop.Job();
        var ran = CommandLine.Run(t => t with { Stop = new CancellationToken(canceled: true) }, "pack", job, "-o", workshop["a.pdf"]);
        Assert.Equal(130, ran.Code);
        Assert.False(File.Exists(workshop["a.pdf"]));
    }

    [Fact]
    public void Colour_and_progress_appear_only_where_a_person_looks()
    {
        using var workshop = new Workshop();
        var job = workshop.Job();
        var plain = CommandLine.Run("check", job);
        Assert.DoesNotContain('\e', plain.Out);
        Assert.Empty(plain.Error);
        var watched = CommandLine.Run(t => t with { Colour = true, Interactive = true }, "check", job);
        Assert.Contains("\e[32mHOLDS\e[0m", watched.Out);
        Assert.Contains("assessing the change …", watched.Error);
    }

    [Fact]
    public void No_line_is_wider_than_the_terminal_where_words_allow()
    {
        var ran = CommandLine.Run(t => t with { Width = 60 }, "calc", "conductor-temperature", "T1=50 degC", "TR=200 degC", "I=20 A", "Imax=26 A");
        Assert.All(ran.Out.Split('\n'), line => Assert.True(line.Length <= 60, line));
    }

    [Fact]
    public void Each_command_stands_in_the_readme()
    {
        var readme = File.ReadAllText(Path.Combine(Root(), "README.md"));
        Assert.All(Commands, c => Assert.Contains($"fairlead {c}", readme));
        Assert.All([0, 1, 2, 3], code => Assert.Contains($"| {code} |", readme));
        Assert.True(readme.Split('\n').Length < 150);
    }

    [Fact]
    public void As_a_process_it_writes_utf_8_and_returns_the_code()
    {
        Assert.Contains("50 °C", Process("calc", "conductor-temperature", "T1=50 degC", "TR=200 degC", "I=20 A", "Imax=26 A").Out);
        Assert.Equal(0, Process("calc").Code);
        Assert.Equal(2, Process("calc", "conductor-temperature").Code);
        Assert.Equal(2, Process("check", "/no such place").Code);
        Assert.Equal(1, Process("calc", "voltage-drop", "legs=100 ft,20 A,100 A,20 degC,200 degC,14", "V=28 V").Code);
    }

    private static Ran Process(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(FairleadApp).Assembly.Location, .. args])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        using var process = System.Diagnostics.Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var result = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new Ran(process.ExitCode, result, error.Result);
    }

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));

    private sealed class Broken : StringWriter
    {
        public override void WriteLine(string? value) => throw new InvalidOperationException("broken on\npurpose");

        public override void WriteLine(object? value) => throw new InvalidOperationException("broken on\npurpose");
    }
}
