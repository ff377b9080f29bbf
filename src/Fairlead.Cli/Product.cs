using System.Reflection;

namespace Fairlead.Cli;

/// <summary>What this is.</summary>
internal static class Product
{
    /// <summary>The version, as <c>fairlead --version</c> prints it.</summary>
    public static string Version { get; } = typeof(Product).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}
