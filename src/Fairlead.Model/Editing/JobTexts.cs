using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;

namespace Fairlead.Model.Editing;

/// <summary>The text of a job's files, to be changed value by value. Each change gives new texts and leaves every character it does not concern,
/// comments too, as it was; the old ones stay as they were, so that a change can be taken back.</summary>
public sealed class JobTexts
{
    private readonly ImmutableSortedDictionary<string, TextFile> files;

    private JobTexts(ImmutableSortedDictionary<string, TextFile> files) => this.files = files;

    /// <summary>Texts by the path of the file.</summary>
    /// <exception cref="FormatException">One of them is no text of a job.</exception>
    public static JobTexts Of(IEnumerable<KeyValuePair<string, string>> files) =>
        new(files.ToImmutableSortedDictionary(f => Editable(f.Key), f => new TextFile(f.Value), StringComparer.Ordinal));

    /// <summary>The texts of files that are YAML; other files of a job are not edited.</summary>
    public static JobTexts Of(IJobFiles files)
    {
        ArgumentNullException.ThrowIfNull(files);
        return Of(files.All.Where(IsText).Select(f => KeyValuePair.Create(f, Encoding.UTF8.GetString(files.Read(f)))));
    }

    /// <summary>The files, by path.</summary>
    public IReadOnlyDictionary<string, string> Files => field ??= files.ToImmutableSortedDictionary(f => f.Key, f => f.Value.Text, StringComparer.Ordinal);

    /// <summary>Whether a file is one of those that are edited.</summary>
    public static bool IsText(string path) => Path.GetExtension(path) is ".yaml" or ".yml";

    /// <summary>The texts as files to be read.</summary>
    public IJobFiles ToFiles() => new MemoryFiles(files.Select(f => KeyValuePair.Create(f.Key, f.Value.Bytes)));

    /// <summary>Puts words under a path; empty words take the value out.</summary>
    /// <exception cref="FormatException">There is no such path, or the file cannot be read.</exception>
    public JobTexts Set(string path, string words)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(words);
        var (file, keys) = Place(path);
        var (type, _) = JobPaths.TypeOf(Keys(path)) ?? throw new FormatException($"No job has a '{path}'.");
        if (words.Trim().Length == 0)
        {
            return Edit(file, keys, YamlEdit.Remove);
        }

        var single = !RecordShape.IsCatalog(type) && !RecordShape.IsRecord(type) && !RecordShape.IsSequence(type);
        var value = single ? YamlEdit.Scalar(words.Trim()) : ListOf(type) is { } ? List(words) : words.Trim();
        return Edit(file, keys, (text, at) => YamlEdit.Set(text, at, value));
    }

    /// <summary>Adds an entry to a catalogue; to the end of a list, whose entries have no id.</summary>
    /// <exception cref="FormatException">The id stands already, or cannot be one.</exception>
    public JobTexts Add(string catalog, string id)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        ArgumentNullException.ThrowIfNull(id);
        if (JobPaths.TypeOf(Keys(catalog)) is ({ } type, _) && JobPaths.IsList(type))
        {
            var (list, at) = Place(catalog);
            return Edit(list, at, YamlEdit.Append);
        }

        if (!Ids.IsValid(id))
        {
            throw new FormatException($"'{id}' cannot be an id; expected {Ids.Expected}.");
        }

        var path = $"{catalog}/{id}";
        var (file, keys) = Place(path);
        return Find(path) is null ? Edit(file, keys, (text, at) => YamlEdit.Set(text, at, "{}")) : throw new FormatException($"The id '{id}' stands already.");
    }

    /// <summary>Takes out what stands under a path.</summary>
    public JobTexts Remove(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var (file, keys) = Place(path);
        return Edit(file, keys, YamlEdit.Remove);
    }

    /// <summary>Gives an entry of a catalogue another id.</summary>
    /// <exception cref="FormatException">The id stands already, or cannot be one.</exception>
    public JobTexts Rename(string path, string id)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(id);
        if (!Ids.IsValid(id) || Find(path[..(path.LastIndexOf('/') + 1)] + id) is not null)
        {
            throw new FormatException($"'{id}' stands already, or cannot be an id; expected {Ids.Expected}.");
        }

        var (file, keys) = Place(path);
        return Edit(file, keys, (text, at) => YamlEdit.Rename(text, at, id));
    }

    /// <summary>Puts a whole file in place of another, or adds it.</summary>
    /// <exception cref="FormatException">It is no text of a job, as the log or a file outside the folder, or it is too long.</exception>
    public JobTexts Replace(string file, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return With(file, new TextFile(text));
    }

    /// <summary>The texts without a file.</summary>
    public JobTexts Without(string file) => new(files.Remove(file));

    /// <summary>The outline under a path and the text of its file, or null.</summary>
    internal (Outline Outline, string Text)? Find(string path)
    {
        var (file, keys) = Place(path);
        return files.TryGetValue(file, out var text) && text.Outline?.Find(keys) is { } outline ? (outline, text.Text) : null;
    }

    /// <summary>The ids of a catalogue, over all files of the parts.</summary>
    public IEnumerable<string> IdsOf(string catalog)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        var keys = Keys(catalog);
        return (keys[0] == "parts" ? PartsFiles() : [Place(catalog).File]).SelectMany(f => OutlineOf(f)?.Find(keys.AsSpan(1))?.Entries.Select(e => e.Key) ?? []);
    }

    private JobTexts Edit(string file, string[] keys, TextEdit edit) => With(file, (files.GetValueOrDefault(file) ?? new TextFile("")).Edit(keys, edit));

    // What is longer than a job is read with could be kept and not read again. What makes a text shorter is taken however long it still is.
    private JobTexts With(string file, TextFile now)
    {
        var (before, length) = (files.GetValueOrDefault(Editable(file))?.Text.Length, now.Text.Length);
        var together = files.Values.Sum(f => (long)f.Text.Length) - (before ?? 0) + length;
        var why = before is null && files.Count >= Limits.Files ? string.Create(CultureInfo.InvariantCulture, $"With '{file}' the job would have more than {Limits.Files} texts, and no more are taken.")
            : length <= (before ?? 0) ? ""
            : length > Limits.FileBytes ? string.Create(CultureInfo.InvariantCulture, $"'{file}' would have {length} characters, and at most {Limits.FileBytes} are taken.")
            : together > Limits.TotalBytes ? string.Create(CultureInfo.InvariantCulture, $"With '{file}' the texts of the job would have {together} characters together, and at most {Limits.TotalBytes} are taken.") : "";
        return why.Length == 0 ? new(files.SetItem(file, now)) : throw new FormatException(why);
    }

    // What is edited is kept under its name in the folder of the job, where the log lies too.
    private static string Editable(string file) => JobPath.IsValid(file) && IsText(file) ? file : throw new FormatException($"'{file}' is not one of the job's texts: these are YAML files within its folder.");

    private Outline? OutlineOf(string file) => files.GetValueOrDefault(file)?.Outline;

    // The file a path stands in, and its keys there.
    private (string File, string[] Keys) Place(string path)
    {
        var keys = Keys(path);
        var file = keys[0] switch
        {
            "job" => JobReader.Root,
            "parts" => PartsFile(keys),
            _ when JobPaths.Roots.ContainsKey(keys[0]) => Named(keys[0], keys[0] + ".yaml"),
            _ => throw new FormatException($"No job has a '{path}'."),
        };
        return (file, keys[1..]);
    }

    private string PartsFile(string[] keys)
    {
        string[] all = [.. PartsFiles()];
        return all.FirstOrDefault(f => keys.Length > 2 && OutlineOf(f)?.Find(keys.AsSpan(1, 2)) is not null)
            ?? all.FirstOrDefault(f => keys.Length > 1 && OutlineOf(f)?.Find(keys.AsSpan(1, 1)) is not null)
            ?? all.FirstOrDefault() ?? "parts/parts.yaml";
    }

    private IEnumerable<string> PartsFiles() => files.Keys.Where(f => JobPath.Matches(f, Named("parts", "parts/*.yaml")));

    private string Named(string key, string usual) => OutlineOf(JobReader.Root)?.Find(["files", key]) is { Words.Length: > 0 } named ? named.Words : usual;

    private static Type? ListOf(Type type) => RecordShape.IsSequence(type) && type.GetGenericArguments()[0] is var item && !RecordShape.IsRecord(item) ? item : null;

    private static string List(string words) =>
        words.TrimStart().StartsWith('[') ? words.Trim() : "[" + string.Join(", ", words.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(YamlEdit.Scalar)) + "]";

    private static string[] Keys(string path) => path.Split('/');
}
