using System.Text;

namespace Fairlead.Cli;

/// <summary>Reads a PIN or password without showing it.</summary>
internal static class SecretInput
{
    /// <summary>Asks a person, or takes the next line when the input comes from elsewhere.</summary>
    public static string Ask(string prompt)
    {
        if (Console.IsInputRedirected)
        {
            return Console.ReadLine() ?? "";
        }

        Console.Error.Write(prompt);
        var typed = new StringBuilder();
        for (var key = Console.ReadKey(intercept: true); key.Key != ConsoleKey.Enter; key = Console.ReadKey(intercept: true))
        {
            if (key.Key == ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        Console.Error.WriteLine();
        return typed.ToString();
    }
}
