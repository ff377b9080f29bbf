using Fairlead.Model.Editing;

namespace Fairlead.Workbench;

/// <summary>What an edit does.</summary>
public enum EditKind
{
    /// <summary>Puts words under a path; empty words take the value out.</summary>
    Set,

    /// <summary>Adds an entry, whose id the words are, to the catalogue under a path.</summary>
    Add,

    /// <summary>Takes out what stands under a path.</summary>
    Remove,

    /// <summary>Gives the entry under a path the id that the words are.</summary>
    Rename,

    /// <summary>Puts the words in place of a whole file, whose name is the path.</summary>
    Replace,
}

/// <summary>One edit of a job's text.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Path">Where.</param>
/// <param name="Words">The words.</param>
public sealed record JobEdit(EditKind Kind, string Path, string Words = "")
{
    /// <summary>Whether nothing of it is missing or unknown, as may be when it comes from elsewhere.</summary>
    public static bool IsWhole(JobEdit? edit) => edit is { Path: not null, Words: not null } && Enum.IsDefined(edit.Kind);

    /// <summary>The texts after the edit.</summary>
    /// <exception cref="FormatException">There is no such place, or the words cannot stand there.</exception>
    public JobTexts On(JobTexts texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return Kind switch
        {
            EditKind.Set => texts.Set(Path, Words),
            EditKind.Add => texts.Add(Path, Words),
            EditKind.Remove => texts.Remove(Path),
            EditKind.Rename => texts.Rename(Path, Words),
            EditKind.Replace => texts.Replace(Path, Words),
            _ => throw new ArgumentOutOfRangeException(nameof(texts), Kind, "Not a kind of edit."),
        };
    }
}
