
namespace Fairlead.Substantiation;

/// <summary>An outcome under its subject, with the origins of its givens for when its sheet is shown.</summary>
internal sealed record Shown(string Subject, Outcome Outcome, Func<IReadOnlyDictionary<string, string>>? Origins = null)
{
    /// <summary>The sheet, worked again.</summary>
    public SubjectSheet Sheet()
    {
        var sheet = Outcome.Work();
        return new SubjectSheet(Subject, Origins is null ? sheet : sheet.WithOrigins(Origins()));
    }
}
