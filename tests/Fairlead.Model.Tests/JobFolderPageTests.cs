using System.Globalization;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Reading;

namespace Fairlead.Tests.Model;

/// <summary>The page on the job folder lists every key of every file, and no other.</summary>
public sealed class JobFolderPageTests
{
    private const string Begin = "<!-- keys -->\n";

    private static string Page => Path.Combine(Demo.Repository(), "docs", "job-folder.md");

    /// <summary>With FAIRLEAD_WRITE=1 in the environment the tables are written anew.</summary>
    [Fact]
    public void The_page_lists_the_keys_that_the_reader_takes()
    {
        var text = File.ReadAllText(Page);
        var head = text[..(text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length)];
        if (Environment.GetEnvironmentVariable("FAIRLEAD_WRITE") == "1")
        {
            File.WriteAllText(Page, head + Tables());
        }

        Assert.Equal(Tables(), text[head.Length..]);
    }

    [Fact]
    public void The_page_states_the_limits_that_hold()
    {
        var text = File.ReadAllText(Page);
        Assert.Contains($"{Limits.FileBytes / 1024 / 1024} MiB a file", text, StringComparison.Ordinal);
        Assert.Contains($"{Limits.TotalBytes / 1024 / 1024} MiB a job", text, StringComparison.Ordinal);
        Assert.Contains($"{Limits.Files} files", text, StringComparison.Ordinal);
        Assert.Contains($"{Limits.Depth} levels", text, StringComparison.Ordinal);
        Assert.Contains($"{Limits.TextLength} characters a value", text, StringComparison.Ordinal);
        Assert.Contains($"first {Limits.Problems} problems", text, StringComparison.Ordinal);
    }

    private static string Tables()
    {
        var page = new StringBuilder();
        var written = new HashSet<Type>();
        foreach (var (file, root) in Records.Roots)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {file}\n");
            foreach (var record in Records.From(root).Where(written.Add))
            {
                page.Append(record == root ? "\n" : "\n### " + Name(record) + "\n\n");
                page.Append("| key | value | meaning |\n| --- | --- | --- |\n");
                foreach (var field in RecordShape.Of(record).Fields.Where(f => !f.IsKey))
                {
                    page.Append(CultureInfo.InvariantCulture, $"| `{field.Key}`{(field.Required ? " *" : "")} | {Value(field)} | {field.Meaning} |\n");
                }
            }
        }

        return page.ToString();
    }

    private static string Value(Field field)
    {
        var item = Records.Item(field.Type);
        var one = field.Ref is { } reference ? $"id of {reference.Names}{(reference.Or.Length > 0 ? $", or `{reference.Or}`" : "")}" : RecordShape.IsRecord(item) ? $"[{Name(item)}](#{Name(item).Replace(' ', '-')})" : Form(item);
        var form = RecordShape.IsCatalog(field.Type) ? $"by id: {one}" : RecordShape.IsSequence(field.Type) ? $"list: {one}" : one;
        return field.Min.Length + field.Max.Length > 0 ? $"{form}, {ScalarReader.Range(field)}" : form;
    }

    private static string Form(Type type) =>
        type.IsEnum ? string.Join(", ", ScalarReader.Choices(type).Select(c => $"`{c}`"))
        : RecordShape.IsQuantity(type) ? Words.Kebab(RecordShape.DimensionOf(type).ToString()).Replace('-', ' ')
        : type == typeof(string) ? "text"
        : type == typeof(bool) ? "`yes` or `no`"
        : type == typeof(int) ? "whole number"
        : type == typeof(double) ? "number"
        : type == typeof(Endpoint) ? "end"
        : type == typeof(DateOnly) ? "date"
        : type == typeof(TimeOnly) ? "time of day"
        : type == typeof(Gauge) ? "wire gauge"
        : throw new InvalidOperationException(type.Name);

    private static string Name(Type record) => Words.Kebab(record.Name).Replace('-', ' ');
}
