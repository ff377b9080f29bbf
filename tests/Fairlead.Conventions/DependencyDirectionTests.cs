using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace Fairlead.Tests.Conventions;

public sealed class DependencyDirectionTests
{
    // The whole allowed graph. A new edge is a reviewed change to this table.
    private static readonly SortedDictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["Fairlead.Calculations"] = [],
        ["Fairlead.Cli"] = ["Fairlead.Calculations", "Fairlead.Client", "Fairlead.Documents", "Fairlead.Drawings", "Fairlead.Model", "Fairlead.Planning", "Fairlead.Records", "Fairlead.Server", "Fairlead.Substantiation"],
        ["Fairlead.Client"] = ["Fairlead.Workbench"],
        ["Fairlead.Documents"] = ["Fairlead.Calculations", "Fairlead.Drawings", "Fairlead.Model", "Fairlead.Planning", "Fairlead.Records", "Fairlead.Substantiation"],
        ["Fairlead.Drawings"] = ["Fairlead.Calculations", "Fairlead.Substantiation"],
        ["Fairlead.Model"] = ["Fairlead.Calculations"],
        ["Fairlead.Planning"] = ["Fairlead.Calculations", "Fairlead.Model", "Fairlead.Substantiation"],
        ["Fairlead.Records"] = ["Fairlead.Calculations", "Fairlead.Model"],
        ["Fairlead.Server"] = ["Fairlead.Client", "Fairlead.Documents", "Fairlead.Planning", "Fairlead.Records", "Fairlead.Workbench"],
        ["Fairlead.Substantiation"] = ["Fairlead.Calculations", "Fairlead.Model"],
        ["Fairlead.Workbench"] = ["Fairlead.Calculations", "Fairlead.Drawings", "Fairlead.Model", "Fairlead.Substantiation"],
    };

    private static readonly SortedDictionary<string, string[]> AllowedPackages = new(StringComparer.Ordinal)
    {
        ["Fairlead.Calculations"] = ["MathNet.Numerics"],
        ["Fairlead.Cli"] = ["System.CommandLine"],
        ["Fairlead.Client"] = ["Microsoft.AspNetCore.Components.WebAssembly"],
        ["Fairlead.Documents"] = ["MiniExcel", "PDFsharp", "QRCoder", "Sylvan.Data.Csv"],
        ["Fairlead.Drawings"] = [],
        ["Fairlead.Model"] = ["YamlDotNet"],
        ["Fairlead.Planning"] = ["Google.OrTools"],
        ["Fairlead.Records"] = ["Konscious.Security.Cryptography.Argon2", "Microsoft.Data.Sqlite", "Npgsql"],
        ["Fairlead.Server"] = ["Microsoft.AspNetCore.Components.WebAssembly.Server", "Microsoft.AspNetCore.Identity.EntityFrameworkCore", "Microsoft.AspNetCore.OpenApi", "Microsoft.EntityFrameworkCore.Sqlite", "OpenTelemetry.Exporter.OpenTelemetryProtocol", "OpenTelemetry.Extensions.Hosting", "OpenTelemetry.Instrumentation.AspNetCore"],
        ["Fairlead.Substantiation"] = [],
        ["Fairlead.Workbench"] = [],
    };

    [Fact]
    public void Project_references_are_exactly_the_allowed_ones() => AssertReferences("ProjectReference", Allowed);

    [Fact]
    public void Package_references_are_exactly_the_allowed_ones() => AssertReferences("PackageReference", AllowedPackages);

    private static void AssertReferences(string kind, SortedDictionary<string, string[]> allowed)
    {
        var actual = Directory
            .EnumerateFiles(Path.Combine(RepoRoot(), "src"), "*.csproj", SearchOption.AllDirectories)
            .ToDictionary(p => Path.GetFileNameWithoutExtension(p)!, p => References(p, kind), StringComparer.Ordinal);

        Assert.Equal(allowed.Keys, actual.Keys.Order(StringComparer.Ordinal));
        Assert.All(allowed, edge => Assert.Equal(edge.Value, actual[edge.Key]));
    }

    private static string[] References(string csproj, string kind) =>
        [.. XDocument.Load(csproj).Descendants(kind)
            .Select(r => r.Attribute("Include")!.Value.Replace('\\', '/'))
            .Select(r => kind == "ProjectReference" ? Path.GetFileNameWithoutExtension(r) : r)
            .Order(StringComparer.Ordinal)];

    private static string RepoRoot([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
