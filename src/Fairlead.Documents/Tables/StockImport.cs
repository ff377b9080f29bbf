using System.Collections.Immutable;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Documents.Tables;

/// <summary>What a table of stock gave.</summary>
/// <param name="Reels">Wire, cable and coax.</param>
/// <param name="Lots">What is counted.</param>
/// <param name="Strange">Parts of the table that the catalogue of the job does not have; they are left out.</param>
/// <param name="Problems">What is wrong with the table, each with its row and column.</param>
/// <param name="Twice">Rows that say the same as a row before them, by both numbers. They count: two reels may be alike. But a table may have been put together twice.</param>
public sealed record StockRows(Catalog<Reel> Reels, Catalog<Lot> Lots, ImmutableArray<string> Strange, ImmutableArray<Problem> Problems, ImmutableArray<(int First, int Again)> Twice);

/// <summary>Reads stock from a table with headings. Columns: part, quantity, unit, batch, made, expires, remnant; only part and quantity must be there. A column may
/// have another heading, which the caller names.</summary>
public static class StockImport
{
    // How stores write pieces.
    private static readonly string[] Each = ["each", "ea", "pc", "pcs", "piece", "pieces", "pack", "packs"];
    private static readonly string[] Keys = ["part", "quantity", "unit", "batch", "made", "expires", "remnant"];

    /// <summary>The columns a table may have.</summary>
    public static IReadOnlyList<string> Columns => Keys;

    /// <summary>Reads a table.</summary>
    /// <param name="rows">Its rows, the first with the headings.</param>
    /// <param name="file">Its name, for the places of problems.</param>
    /// <param name="headings">Heading of a column, by column, where it is not the name of the column itself.</param>
    /// <param name="parts">The catalogue of the job.</param>
    public static StockRows Read(ImmutableArray<TextRow> rows, string file, IReadOnlyDictionary<string, string> headings, PartsCatalog parts)
    {
        ArgumentNullException.ThrowIfNull(headings);
        ArgumentNullException.ThrowIfNull(parts);
        return new Session(file, headings, parts).Read(rows);
    }

    private sealed class Session(string file, IReadOnlyDictionary<string, string> headings, PartsCatalog parts)
    {
        private readonly List<Problem> problems = [];
        private readonly List<Reel> reels = [];
        private readonly List<Lot> lots = [];
        private readonly SortedSet<string> strange = new(StringComparer.Ordinal);
        private readonly List<(int First, int Again)> twice = [];
        private readonly Dictionary<string, int> seen = new(StringComparer.Ordinal);
        private readonly Dictionary<string, int> at = new(StringComparer.Ordinal);

        public StockRows Read(ImmutableArray<TextRow> rows)
        {
            Head(rows.IsEmpty ? [] : rows[0].Cells);
            var filled = rows.Skip(1).Where(r => r.Cells.Any(c => c.Trim().Length > 0)).ToArray();
            if (filled.Length == 0 && problems.Count == 0)
            {
                problems.Add(new("no-rows", new(file, 2, 1), "no row stands below the headings", "nothing", "a row for each reel or lot on hand"));
            }

            foreach (var row in filled.Where(_ => problems.Count < Limits.Problems && at.ContainsKey("part") && at.ContainsKey("quantity")))
            {
                Row(row);
            }

            return new(new(reels), new(lots), [.. strange], [.. problems], [.. twice]);
        }

        private void Head(Sequence<string> cells)
        {
            foreach (var key in Keys)
            {
                var wanted = headings.GetValueOrDefault(key, key);
                int[] found = [.. Enumerable.Range(0, cells.Count).Where(i => string.Equals(cells[i].Trim(), wanted, StringComparison.OrdinalIgnoreCase))];
                if (found.Length > 1)
                {
                    problems.Add(new("column-twice", new(file, 1, found[1] + 1), $"two columns are headed '{wanted}'", string.Create(CultureInfo.InvariantCulture, $"columns {found[0] + 1} and {found[1] + 1}"), $"one column for {key}"));
                }

                if (found.Length > 0)
                {
                    at[key] = found[0];
                }
                else if (key is "part" or "quantity" || headings.ContainsKey(key))
                {
                    problems.Add(new("missing-column", new(file, 1, 1), $"no column is headed '{wanted}'", string.Join(", ", cells.Take(12)), $"a column for {key}", Words.Nearest(wanted, cells) is { } near ? $"did you mean '{near}'?" : ""));
                }
            }
        }

        private void Row(TextRow row)
        {
            string Cell(string key) => at.TryGetValue(key, out var i) && i < row.Cells.Count ? row.Cells[i].Trim() : "";
            var (part, id) = (Cell("part"), string.Create(CultureInfo.InvariantCulture, $"ROW{row.Line}"));
            var before = problems.Count;
            if (part.Length > 0 && !seen.TryAdd(string.Join('\n', Keys.Select(Cell)), row.Line))
            {
                twice.Add((seen[string.Join('\n', Keys.Select(Cell))], row.Line));
            }

            if (IsLong(part))
            {
                var text = Cell("unit").Length > 0 ? $"{Cell("quantity")} {Cell("unit")}" : Cell("quantity");
                var length = QuantityReader.TryRead(Dimension.Length, text, out var si, out _) && si > 0 ? new Length(si) : (Length?)null;
                Need(length is not null, row, "quantity", text, "a length above 0 with its unit, for example 25 m");
                var remnant = Flag(row, Cell("remnant"));
                if (problems.Count == before)
                {
                    reels.Add(new Reel(id, part, length!.Value, Cell("batch"), remnant));
                }
            }
            else if (IsCounted(part))
            {
                var read = double.TryParse(Cell("quantity"), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var quantity);
                Need(read && quantity <= 1e6, row, "quantity", Cell("quantity"), "a number from 0 to 1000000 with a decimal point");
                Need(Counts(part, Cell("unit")), row, "unit", Cell("unit"), $"{UnitOf(part)}, in which {part} is counted, or nothing");
                var (made, expires) = (Day(row, "made", Cell("made")), Day(row, "expires", Cell("expires")));
                if (problems.Count == before)
                {
                    lots.Add(new Lot(id, part, quantity, Cell("batch"), made, expires));
                }
            }
            else if (part.Length > 0)
            {
                strange.Add(part);
            }
            else
            {
                Need(false, row, "part", "nothing", "the id of a part");
            }
        }

        private bool IsLong(string part) => parts.Wires?.Contains(part) == true || parts.Cables?.Contains(part) == true || parts.Coax?.Contains(part) == true;

        private bool IsCounted(string part) => parts.Equipment?.Contains(part) == true || parts.Antennas?.Contains(part) == true || parts.Contacts?.Contains(part) == true || parts.Connectors?.Contains(part) == true
            || parts.Breakers?.Contains(part) == true || parts.Fasteners?.Contains(part) == true || parts.Rivets?.Contains(part) == true || parts.AnchorNuts?.Contains(part) == true
            || parts.Clamps?.Contains(part) == true || parts.Sealants?.Contains(part) == true || parts.Consumables?.Contains(part) == true;

        private string UnitOf(string part) => parts.Sealants?.Contains(part) == true ? "pack" : parts.Consumables?.Find(part)?.Unit is { Length: > 0 } unit ? unit : "each";

        private bool Counts(string part, string unit) => unit.Length == 0 || string.Equals(unit, UnitOf(part), StringComparison.OrdinalIgnoreCase) || (UnitOf(part) is "each" or "pack" && Each.Contains(unit, StringComparer.OrdinalIgnoreCase));

        private bool Flag(TextRow row, string text)
        {
            var known = text.ToUpperInvariant() is "" or "YES" or "NO" or "TRUE" or "FALSE" or "1" or "0";
            Need(known, row, "remnant", text, "yes or no");
            return text.ToUpperInvariant() is "YES" or "TRUE" or "1";
        }

        private DateOnly? Day(TextRow row, string key, string text)
        {
            var read = DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day);
            Need(read || text.Length == 0, row, key, text, "a date, for example 2027-03-31");
            return read ? day : null;
        }

        private void Need(bool holds, TextRow row, string key, string found, string expected)
        {
            if (!holds)
            {
                problems.Add(new("bad-value", new(file, row.Line, at.GetValueOrDefault(key) + 1), $"'{headings.GetValueOrDefault(key, key)}' cannot be read", $"'{found}'", expected));
            }
        }
    }
}
