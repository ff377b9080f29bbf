using Fairlead.Calculations;

namespace Fairlead.Documents.Tables;

/// <summary>A cell of a data table: text, or a number that a spreadsheet can add up.</summary>
/// <param name="Text">The text; empty for a number.</param>
/// <param name="Number">The number; null for text.</param>
public readonly record struct DataCell(string Text, double? Number = null)
{
    /// <summary>A cell of text.</summary>
    public static implicit operator DataCell(string text) => new(text);

    /// <summary>A cell with a number, or an empty one.</summary>
    public static implicit operator DataCell(double? number) => new("", number);

    /// <summary>A cell with a number.</summary>
    public static implicit operator DataCell(double number) => new("", number);
}

/// <summary>A table of data for other programs: one line of headings, then rows of as many cells.</summary>
/// <param name="Name">Name, for the tab of a workbook.</param>
/// <param name="Headings">Headings, all different.</param>
/// <param name="Rows">Rows.</param>
public sealed record DataTable(string Name, Sequence<string> Headings, Sequence<Sequence<DataCell>> Rows);
