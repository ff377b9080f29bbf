using System.Collections.Immutable;
using System.Globalization;

namespace Fairlead.Calculations;

/// <summary>Writes a sheet: the givens and their ranges first, then whatever the calculation adds, then the verdict.</summary>
public sealed class SheetBuilder
{
    private readonly ImmutableArray<Given>.Builder given = ImmutableArray.CreateBuilder<Given>();
    private readonly ImmutableArray<SheetTable>.Builder tables = ImmutableArray.CreateBuilder<SheetTable>();
    private readonly ImmutableArray<Step>.Builder steps = ImmutableArray.CreateBuilder<Step>();
    private readonly ImmutableArray<Check>.Builder checks = ImmutableArray.CreateBuilder<Check>();
    private readonly ImmutableArray<string>.Builder cannotTell = ImmutableArray.CreateBuilder<string>();
    private readonly ImmutableArray<string>.Builder cautions = ImmutableArray.CreateBuilder<string>();
    private readonly List<Source> sources;

    private SheetBuilder(CalculationInfo info) => sources = [.. info.Sources];

    /// <summary>Whether something already forbids a conclusion.</summary>
    public bool Stopped => cannotTell.Count > 0;

    /// <summary>Runs the work of a calculation unless an input lies outside its range.</summary>
    /// <param name="info">The calculation.</param>
    /// <param name="input">Its input.</param>
    /// <param name="work">The formulas; not called when an input is out of range.</param>
    public static Sheet Work<TInput>(CalculationInfo<TInput> info, TInput input, Action<SheetBuilder> work)
        where TInput : notnull
    {
        ArgumentNullException.ThrowIfNull(info);
        ArgumentNullException.ThrowIfNull(work);
        var builder = new SheetBuilder(info);
        builder.AddGivens(info.Inputs, input);
        if (!builder.Stopped)
        {
            work(builder);
        }

        return builder.Finish(info);
    }

    /// <summary>The value of a given line, by symbol.</summary>
    internal Measure Given(string symbol) => given.First(g => g.Symbol == symbol).Value.Number!.Value;

    /// <summary>Adds a step of the working and returns its value.</summary>
    public Quantity<TKind> Step<TKind>(string symbol, string meaning, string formula, Quantity<TKind> value, string unit, Source? source = null)
        where TKind : IKind
    {
        Add(new Step(symbol, meaning, formula, value.As(unit), source));
        return value;
    }

    /// <summary>Adds a step whose value is a pure number.</summary>
    public double Step(string symbol, string meaning, string formula, double value, Source? source = null)
    {
        Add(new Step(symbol, meaning, formula, Measure.Number(value), source));
        return value;
    }

    /// <summary>Adds a check.</summary>
    public void Check(string name, Measure demand, Sense sense, Measure limit, string rule, Source source, Verdict whenBroken = Verdict.Fails)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (double.IsFinite(demand.Si) && double.IsFinite(limit.Si))
        {
            checks.Add(new Check(name, demand, sense, limit, rule, source, whenBroken));
        }
        else
        {
            CannotTell($"'{name}' has no finite value.");
        }

        sources.Add(source);
    }

    /// <summary>Adds a table to the sheet.</summary>
    public void Table(string title, ImmutableArray<string> columns, IEnumerable<ImmutableArray<SheetValue>> rows) => tables.Add(new SheetTable(title, columns, [.. rows]));

    /// <summary>Adds a line of words, such as a choice made.</summary>
    public void Note(string symbol, string meaning, SheetValue value, string origin) => given.Add(new Given(symbol, meaning, value, origin));

    /// <summary>Adds a caution: shown on the sheet, and the verdict is then at best <see cref="Verdict.Caution"/> if <paramref name="affectsVerdict"/>.</summary>
    public void Caution(string text, bool affectsVerdict = false)
    {
        cautions.Add(text);
        this.affectsVerdict |= affectsVerdict;
    }

    /// <summary>Names a source used in this run only, such as the table row that was looked up.</summary>
    public void Uses(Source source) => sources.Add(source);

    /// <summary>Says why nothing can be concluded.</summary>
    public void CannotTell(string why) => cannotTell.Add(why);

    private bool affectsVerdict;

    private void Add(Step step)
    {
        if (!double.IsFinite(step.Value.Si))
        {
            CannotTell($"'{step.Meaning}' ({step.Symbol}) has no finite value for these inputs.");
            return;
        }

        steps.Add(step);
        if (step.Source is not null)
        {
            sources.Add(step.Source);
        }
    }

    private void AddGivens(ImmutableArray<InputInfo> inputs, object input)
    {
        foreach (var info in inputs)
        {
            var value = info.Read(input);
            if (info.Form == InputForm.Table)
            {
                AddTable(info, (System.Collections.IEnumerable)value!);
            }
            else if (value is not null)
            {
                given.Add(new Given(info.Symbol, info.Meaning, Shown(info, value, info.Symbol)));
            }
        }
    }

    private void AddTable(InputInfo info, System.Collections.IEnumerable rows)
    {
        var number = 0;
        var shown = ImmutableArray.CreateBuilder<ImmutableArray<SheetValue>>();
        foreach (var row in rows)
        {
            number++;
            var where = string.Create(CultureInfo.InvariantCulture, $"{info.Symbol}, row {number}: ");
            shown.Add([.. info.Columns.Select(c => c.Read(row!) is { } v ? Shown(c, v, where + c.Symbol) : "")]);
        }

if (number == 0 && info.Optional)
        {
            return;
        }

        // A column that was left out in every row says nothing.
        var used = Enumerable.Range(0, info.Columns.Length).Where(c => !info.Columns[c].Optional || shown.Any(row => row[c].Number is not null || row[c].Words is not "")).ToArray();
        tables.Add(new SheetTable(info.Meaning, [.. used.Select(c => info.Columns[c].Meaning)], [.. shown.Select(row => used.Select(c => row[c]).ToImmutableArray())]));
    }

    private SheetValue Shown(InputInfo info, object value, string name)
    {
        if (value is not double si)
        {
            return value is bool yes ? (yes ? "yes" : "no") : value is Enum choice ? Words.Kebab(choice.ToString()) : value.ToString() ?? "";
        }

        var measure = new Measure(si, info.Unit!);
        if (!info.Accepts(si))
        {
            CannotTell($"{name} ({info.Meaning}) is {measure}; this method is valid for {info.RangeText}.");
        }

        return measure;
    }

    private Sheet Finish(CalculationInfo info)
    {
        var worst = checks.Select(c => c.Verdict).Append(affectsVerdict ? Verdict.Caution : Verdict.Holds).Append(Stopped ? Verdict.CannotTell : Verdict.Holds).Max();
        return new Sheet(
            info.Name, info.Title, worst, given.DrainToImmutable(), tables.DrainToImmutable(), steps.DrainToImmutable(), checks.DrainToImmutable(),
            cannotTell.DrainToImmutable(), cautions.DrainToImmutable(), [.. sources.Distinct()]);
    }
}
