using System.Collections.Immutable;
using Fairlead.Model.Reading;

namespace Fairlead.Model.Editing;

/// <summary>How a field is edited.</summary>
public enum FieldKind
{
    /// <summary>Words.</summary>
    Words,

    /// <summary>A number, or a quantity with its unit.</summary>
    Number,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>One of some words.</summary>
    Choice,

    /// <summary>The id of something else in the job.</summary>
    Reference,

    /// <summary>A day.</summary>
    Day,

    /// <summary>Several words, with commas between.</summary>
    List,

    /// <summary>Fields of its own.</summary>
    Group,

    /// <summary>Entries of its own, each with fields.</summary>
    Entries,
}

/// <summary>A field of a form.</summary>
/// <param name="Key">Its key in the file.</param>
/// <param name="Path">Its model path.</param>
/// <param name="Kind">How it is edited.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Expected">What may stand there.</param>
/// <param name="Text">What stands there, as it was written.</param>
/// <param name="Required">Whether it may not be left out.</param>
/// <param name="Choices">The words or ids to choose from.</param>
/// <param name="Problem">What is wrong with it; empty when nothing is.</param>
/// <param name="Fields">The fields of a group.</param>
public sealed record FormField(
    string Key, string Path, FieldKind Kind, string Meaning, string Expected, string Text, bool Required, ImmutableArray<string> Choices, string Problem, ImmutableArray<FormField> Fields);

/// <summary>Rows and columns of a catalogue, or of a list of records. Columns are the single values that any row has, and those that each must have.</summary>
public sealed record FormGrid(string Path, ImmutableArray<FormColumn> Columns, ImmutableArray<FormRow> Rows)
{
    /// <summary>Columns that may be filled and stand empty in every row.</summary>
    public ImmutableArray<FormColumn> More { get; init; } = [];

    /// <summary>Whether it is a list: its rows have no id, and their place in it, from 0, stands for one.</summary>
    public bool Numbered { get; init; }
}

/// <summary>A column: the path below an entry, <c>place/fs</c>, and what it is.</summary>
public sealed record FormColumn(string Path, FieldKind Kind, string Meaning, string Expected, bool Required, ImmutableArray<string> Choices);

/// <summary>A row: the id, and the words of each column as they are written.</summary>
public sealed record FormRow(string Id, ImmutableArray<string> Cells, string Problem)
{
    /// <summary>What is wrong with each cell; none where every cell is right.</summary>
    public ImmutableArray<string> Problems { get; init; } = [];
}

/// <summary>The forms and grids in which a job is edited. They follow from the records of the model, as the schemas do.</summary>
/// <param name="texts">The texts.</param>
/// <param name="problems">What is wrong with them, by model path.</param>
public sealed class JobForm(JobTexts texts, IReadOnlyDictionary<string, string> problems)
{
    /// <summary>The fields under a path; empty when no job has such a path.</summary>
    public ImmutableArray<FormField> Fields(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return JobPaths.TypeOf(path.Split('/')) is ({ } type, _) && RecordShape.IsRecord(type) ? FieldsOf(type, path, texts.Find(path)?.Outline) : [];
    }

    /// <summary>The catalogue or list of records under a path as a grid; null when there is none.</summary>
    public FormGrid? Grid(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (JobPaths.TypeOf(path.Split('/')) is not ({ } type, _) || !(RecordShape.IsCatalog(type) || JobPaths.IsList(type)))
        {
            return null;
        }

        var columns = Columns(type.GetGenericArguments()[0], "").ToArray();
        var rows = texts.IdsOf(path).Select(id => (Id: id, Cells: columns.Select(c => texts.Find($"{path}/{id}/{c.Path}") is { } found ? Words(found.Outline, found.Text) : "").ToArray())).ToArray();
        int[] shown = [.. Enumerable.Range(0, columns.Length).Where(i => columns[i].Required || rows.Any(r => r.Cells[i].Length > 0))];
        return new FormGrid(path, [.. shown.Select(i => columns[i])], [.. rows.Select(r => Row($"{path}/{r.Id}", r.Id, [.. shown.Select(i => r.Cells[i])], [.. shown.Select(i => columns[i].Path)]))])
        {
            More = [.. columns.Where((_, i) => !shown.Contains(i))], Numbered = !RecordShape.IsCatalog(type),
        };
    }

    private FormRow Row(string path, string id, ImmutableArray<string> cells, string[] columns) => ProblemOf(path) is { Length: > 0 } problem
        ? new FormRow(id, cells, problem) { Problems = [.. columns.Select(c => problems.GetValueOrDefault($"{path}/{c}", ""))] } : new FormRow(id, cells, "");

    private ImmutableArray<FormField> FieldsOf(Type type, string path, Outline? at) =>
        [.. RecordShape.Of(type).Fields.Where(f => !f.IsKey).Select(f => FieldOf(f, $"{path}/{f.Key}", at?.Entry(f.Key)?.Value))];

    private FormField FieldOf(Field field, string path, Outline? at)
    {
        var kind = KindOf(field);
        return new FormField(
            field.Key, path, kind, field.Meaning, Expected(field, kind), at is null || kind is FieldKind.Group or FieldKind.Entries ? "" : Words(at, texts.Find(path)?.Text ?? ""), field.Required,
            Choices(field), problems.GetValueOrDefault(path, ""), kind == FieldKind.Group ? FieldsOf(field.Type, path, at) : []);
    }

    private IEnumerable<FormColumn> Columns(Type type, string prefix) => RecordShape.Of(type).Fields.Where(f => !f.IsKey).SelectMany(f => KindOf(f) switch
    {
        FieldKind.Group => Columns(f.Type, $"{prefix}{f.Key}/").Select(c => c with { Required = c.Required && f.Required }),
        FieldKind.Entries => [],
        var kind => [new FormColumn(prefix + f.Key, kind, f.Meaning, Expected(f, kind), f.Required, Choices(f))],
    });

    private ImmutableArray<string> Choices(Field field) =>
        field.Ref is { } reference ? [.. reference.Kinds.SelectMany(k => JobPaths.Catalogs[k]).SelectMany(texts.IdsOf).Concat(reference.Or.Length > 0 ? [reference.Or] : []).Distinct(StringComparer.Ordinal)]
        : field.Type.IsEnum ? [.. ScalarReader.Choices(field.Type)] : [];

    private string ProblemOf(string path) => problems.Where(p => p.Key == path || p.Key.StartsWith(path + "/", StringComparison.Ordinal)).Select(p => p.Value).FirstOrDefault("");

    private static string Words(Outline at, string text) => at.Form switch
    {
        OutlineForm.Scalar => at.Words,
        OutlineForm.List when at.Entries.All(e => e.Value.Form == OutlineForm.Scalar) => string.Join(", ", at.Entries.Select(e => e.Value.Words)),
        _ => text[at.Start..at.End],
    };

    private static FieldKind KindOf(Field field) => field.Type switch
    {
        var t when RecordShape.IsCatalog(t) => FieldKind.Entries,
        var t when RecordShape.IsSequence(t) => JobPaths.IsList(t) ? FieldKind.Entries : FieldKind.List,
        var t when RecordShape.IsRecord(t) => FieldKind.Group,
        _ when field.Ref is not null => FieldKind.Reference,
        { IsEnum: true } => FieldKind.Choice,
        var t when t == typeof(bool) => FieldKind.YesNo,
        var t when t == typeof(DateOnly) => FieldKind.Day,
        var t when RecordShape.IsQuantity(t) || t == typeof(double) || t == typeof(int) => FieldKind.Number,
        _ => FieldKind.Words,
    };

    private static string Expected(Field field, FieldKind kind) => kind switch
    {
        FieldKind.Group or FieldKind.Entries => "",
        FieldKind.List => "words with commas between",
        FieldKind.Reference => $"the id of {field.Ref!.Names}" + (field.Ref.Or.Length > 0 ? $", or '{field.Ref.Or}'" : ""),
        _ => ScalarReader.Expected(field.Type) + (field.Min.Length + field.Max.Length > 0 ? ", " + ScalarReader.Range(field) : ""),
    };
}
