namespace Fairlead.Records;

/// <summary>Why a part is not taken to be fitted: the papers have to say which one it is, and nobody can read its plate once it is covered.</summary>
internal static class Fitting
{
    public static IEnumerable<string> Of(Candidate c)
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

    private static IEnumerable<string> Missing(Payload told, string field, string name) => told.Text(field).Trim().Length == 0 ? [name] : [];
}
