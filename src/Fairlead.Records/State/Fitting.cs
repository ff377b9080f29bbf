using Fairlead.Calculations;

namespace Fairlead.Records;

/// <summary>Why a part is not taken to be fitted or removed: the papers have to say which one it is, and nobody can read the plate of what is covered or weigh what is gone.</summary>
internal static class Fitting
{
    // What was cut up or is stuck to other parts is not weighed, and comes out all the same.
    private const string Unweighed = "none";

    public static IEnumerable<string> Of(Candidate c) => c.Entry.Kind == "removed" ? Removed(c) : Fitted(c);

    private static IEnumerable<string> Fitted(Candidate c)
    {
        var id = Kinds.IdOf(c.Entry.Subject);
        if (c.Register.Required.Parts.FirstOrDefault(p => p.Id == id) is not { } part)
        {
            return [];
        }

        string[] missing = [.. Missing(c.Entry.Payload, "part", "part number"), .. Missing(c.Entry.Payload, "serial", "serial number")];
        return missing.Length == 0 ? []
            : [$"{c.Entry.Subject} ({part.Part}) is fitted with its {string.Join(" and its ", missing)}, as read from its plate: 'part=' and 'serial=', and 'serial=none' where the plate shows none."];
    }

    // The record of weight and balance rests on what the scales say.
    private static IEnumerable<string> Removed(Candidate c)
    {
        var weight = c.Entry.Payload.Text("weight").Trim();
        if (weight.Length > 0 && !string.Equals(weight, Unweighed, StringComparison.OrdinalIgnoreCase) && !(QuantityReader.TryRead(Dimension.Mass, weight, out var mass, out _) && mass > 0))
        {
            yield return $"'weight' is '{weight}', expected a mass with its unit, as '1.35 kg' or '3.2 lb'.";
        }

        string[] missing = [.. Missing(c.Entry.Payload, "serial", "serial number"), .. Missing(c.Entry.Payload, "weight", "weight")];
        if (missing.Length > 0 && c.Register.Required.Removed.Contains(Kinds.IdOf(c.Entry.Subject)))
        {
            yield return $"{c.Entry.Subject} is removed with its {string.Join(" and its ", missing)}, as its plate and the scales show: 'serial=' and 'weight=1.35 kg'; 'serial=none' where the plate shows none, and 'weight=none' where it cannot be weighed.";
        }
    }

    private static IEnumerable<string> Missing(Payload told, string field, string name) => told.Text(field).Trim().Length == 0 ? [name] : [];
}
