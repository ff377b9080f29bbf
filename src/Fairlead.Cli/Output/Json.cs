using System.Text.Encodings.Web;
using System.Text.Json;

namespace Fairlead.Cli.Output;

/// <summary>How everything is written as JSON: camel case, indented, letters as they are.</summary>
internal static class Json
{
    public static JsonSerializerOptions Options { get; } = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        NewLine = "\n",
    };

    public static string Text<T>(T value) => JsonSerializer.Serialize(value, Options);
}
