using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>What a key of a job file means: shown in schemas, in the starter job and in messages.</summary>
/// <param name="meaning">A few words.</param>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class DocAttribute(string meaning) : Attribute
{
    /// <summary>The meaning.</summary>
    public string Meaning { get; } = meaning;

    /// <summary>The least sensible value, as text with its unit; a smaller one is an error ("absurd value").</summary>
    public string Min { get; init; } = "";

    /// <summary>The greatest sensible value, as text with its unit.</summary>
    public string Max { get; init; } = "";
}

/// <summary>Marks the parameter that takes the key under which an entity stands in its catalogue.</summary>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class KeyAttribute : Attribute;

/// <summary>Says that the text is the id of an entity of one of some kinds: an unknown id is an error with the nearest known one.</summary>
/// <param name="kinds">The entity kinds, by record type.</param>
[AttributeUsage(AttributeTargets.Parameter)]
public sealed class RefAttribute(params Type[] kinds) : Attribute
{
    /// <summary>The entity kinds.</summary>
    public IReadOnlyList<Type> Kinds { get; } = kinds;

    /// <summary>The kinds in words, for messages: <c>wire, cable or coax part</c>.</summary>
    public string Names
    {
        get
        {
            string[] names = [.. Kinds.Select(k => Words.Kebab(k.Name).Replace('-', ' '))];
            var shared = names.All(n => n.EndsWith(" part", StringComparison.Ordinal)) ? " part" : "";
            string[] own = [.. names.Select(n => n[..^shared.Length])];
            return (own.Length > 1 ? string.Join(", ", own[..^1]) + " or " : "") + own[^1] + shared;
        }
    }

    /// <summary>A word that may stand in place of an id, such as "auto".</summary>
    public string Or { get; init; } = "";
}
