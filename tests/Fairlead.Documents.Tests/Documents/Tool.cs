using System.ComponentModel;
using System.Diagnostics;
using System.Text;

namespace Fairlead.Tests.Documents;

/// <summary>Runs a program of the operating system on a file. A missing program is a plain failure that says how to get it.</summary>
internal static class Tool
{
    public static string Run(string program, byte[] file, params string[] arguments) => Encoding.UTF8.GetString(Bytes(program, file, arguments));

    public static byte[] Bytes(string program, byte[] file, params string[] arguments)
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, file);
            using var process = Start(program, [.. arguments, path]);
            using var output = new MemoryStream();
            var errors = process.StandardError.ReadToEndAsync();
            process.StandardOutput.BaseStream.CopyTo(output);
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {errors.Result}{Encoding.UTF8.GetString(output.ToArray())}");
            return output.ToArray();
        }
        finally
        {
            File.Delete(path);
        }
    }

    /// <summary>Whether a program is installed; a missing one fails the test where FAIRLEAD_REQUIRE_TOOLS is 1.</summary>
    public static bool IsThere(string program) => Environment.GetEnvironmentVariable("FAIRLEAD_REQUIRE_TOOLS") == "1"
        || (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));

    private static Process Start(string program, string[] arguments)
    {
        try
        {
            return Process.Start(new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        }
        catch (Win32Exception)
        {
            Assert.Fail($"'{program}' is not installed, and this test needs it. On Debian: apt-get install {program}");
            throw;
        }
    }
}
