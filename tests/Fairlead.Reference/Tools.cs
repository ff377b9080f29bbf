using System.Diagnostics;

namespace Fairlead.Tests.Reference;

/// <summary>Reference programs that <c>eng/install-test-tools</c> installs. Where one is absent its tests are skipped by name, or fail when
/// FAIRLEAD_REQUIRE_TOOLS is 1, as it is in continuous integration.</summary>
internal static class Tools
{
    /// <summary>Skips the test, or fails it, when a program is absent.</summary>
    public static void Need(string program)
    {
        var present = (System.Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));
        var message = $"'{program}' is not installed: run eng/install-test-tools";
        Assert.False(!present && System.Environment.GetEnvironmentVariable("FAIRLEAD_REQUIRE_TOOLS") == "1", message);
        Assert.SkipUnless(present, message);
    }

    /// <summary>Writes an input file in a folder of its own, runs the program over it and reads its result.</summary>
    public static string Run(string program, string extension, string input, Func<string, IEnumerable<string>> arguments, Func<string, string> result)
    {
        var folder = Directory.CreateTempSubdirectory("fairlead-");
        try
        {
            var file = Path.Combine(folder.FullName, "input." + extension);
            File.WriteAllText(file, input);
            using var process = Process.Start(new ProcessStartInfo(program, arguments(file)) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}:\n{output}\n{errors.Result}\n{input}");
            return result(file);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
