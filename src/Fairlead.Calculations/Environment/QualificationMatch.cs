namespace Fairlead.Calculations.Environment;

/// <summary>A category of one section of the environmental standard.</summary>
/// <param name="Section">Section, for example temperature-altitude.</param>
/// <param name="Code">Category, for example B2.</param>
public sealed record CategoryRow([In("section", "section of the standard")] string Section, [In("code", "category")] string Code);

/// <summary>Input of <see cref="QualificationMatch"/>.</summary>
/// <param name="Needs">What the zone asks for, by section.</param>
/// <param name="Has">What the box is qualified for.</param>
/// <param name="Altitude">Highest pressure altitude at the box.</param>
/// <param name="Hottest">Highest ambient temperature at the box.</param>
/// <param name="Coldest">Lowest ambient temperature at the box.</param>
public sealed record QualificationMatchInput(
    [In("needs", "what the zone asks for")] Sequence<CategoryRow> Needs,
    [In("has", "what the box is qualified for")] Sequence<CategoryRow> Has,
    [In("alt", "highest pressure altitude at the box", "ft", Min = 0, Max = 70000, Default = "not checked")] Length? Altitude = null,
    [In("Tmax", "highest ambient temperature", "°C", Min = -90, Max = 300, Default = "not checked")] Temperature? Hottest = null,
    [In("Tmin", "lowest ambient temperature", "°C", Min = -90, Max = 100, Default = "not checked")] Temperature? Coldest = null);

/// <summary>Whether a box or antenna is qualified for the place it stands in, section by section. Equal categories match, and so does one of several stated as <c>B, M</c>;
/// X, not tested, meets nothing; temperature and altitude are compared limit by limit; other categories only where a table tells that one covers the other.</summary>
/// <remarks>Check value: category B2 serves up to 25,000 ft and 70 °C (public summary of DO-160G table 4-1).</remarks>
public sealed class QualificationMatch : ICalculation<QualificationMatchInput>
{
    private static readonly Source Standard = new("RTCA DO-160G", "", "categories by section, X for not tested", Basis.Memory);

    /// <inheritdoc/>
    public static CalculationInfo<QualificationMatchInput> Info { get; } = new(
        "qualification-match", "Qualification against the zone", Discipline.Environment,
        "Whether the qualification categories of a box meet what its zone asks for",
        "needs='temperature-altitude,B1;vibration,S' has='temperature-altitude,B2;vibration,S' alt='20000 ft' Tmax='60 degC' Tmin='-40 degC'",
        TemperatureAltitude.Limits, TemperatureAltitude.LowLimits, QualificationSections.Order, Standard);

    /// <inheritdoc/>
    public static Sheet Run(QualificationMatchInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Needs.Count == 0)
        {
            s.CannotTell("It is not known what the zone asks for.");
        }

        foreach (var need in input.Needs)
        {
            Section(s, need, CodeOf(input.Has, need.Section));
        }

        if (CodeOf(input.Has, TemperatureAltitude.Section) is { } code && !Untested(code))
        {
            Ambient(s, input, code);
        }

        s.Caution("Categories of different issues of the standard need not be the same; compare them in the issues the maker and the certification basis name.");
    });

    private static void Section(SheetBuilder s, CategoryRow need, string? has)
    {
        if (QualificationSections.Number(need.Section) is not { } number)
        {
            s.CannotTell($"Section {need.Section} is none of the standard: {string.Join(", ", QualificationSections.Names)}.");
        }
        else if (Untested(need.Code) || Stated(has).Any(code => Same(need.Code, code)))
        {
            return;
        }
        else if (has is null)
        {
            s.CannotTell($"The box states no category of section {need.Section}, where its zone asks for {need.Code}.");
        }
        else if (Untested(has))
        {
            s.Check($"tests of section {need.Section}", Measure.Number(0), Sense.AtLeast, Measure.Number(1), "the box is tested in each section the zone asks for", Standard);
        }
        else if (number == TemperatureAltitude.Number && TemperatureAltitude.Find(need.Code) is { } asked && TemperatureAltitude.Find(has) is { } given)
        {
            Compare(s, need.Code, has, asked, given);
        }
        else if (number != TemperatureAltitude.Number && Stated(has).Select(code => QualificationSections.Compare(number, code, need.Code)).Min() is var covering and not Covering.Unknown)
        {
            s.Check($"category {has} of section {need.Section} for {need.Code}", Measure.Number(covering == Covering.Covers ? 1 : 0), Sense.AtLeast, Measure.Number(1), "the box has shown all that the zone's category asks, 1 for yes", QualificationSections.Order);
            if (covering == Covering.Covers)
            {
                s.Caution($"That category {has} covers {need.Code} in section {need.Section} is from memory: confirm it in the standard.", true);
            }
        }
        else
        {
            s.CannotTell($"Whether category {has} covers {need.Code} in section {need.Section} is not known here; compare them in the standard.");
        }
    }

    private static void Compare(SheetBuilder s, string need, string has, TemperatureAltitude asked, TemperatureAltitude given)
    {
        const string rule = "each limit of the box's category reaches as far as that of the zone's";
        s.Check($"altitude of category {has}", given.Altitude.As("ft"), Sense.AtLeast, asked.Altitude.As("ft"), rule, TemperatureAltitude.Limits);
        Limit("operating high temperature", given.OperatingHigh, Sense.AtLeast, asked.OperatingHigh, TemperatureAltitude.Limits);
        Limit("short-time high temperature", given.ShortTimeHigh, Sense.AtLeast, asked.ShortTimeHigh, TemperatureAltitude.Limits);
        Limit("short-time low temperature", given.ShortTimeLow, Sense.AtMost, asked.ShortTimeLow, TemperatureAltitude.Limits);
        Limit("operating low temperature", given.OperatingLow, Sense.AtMost, asked.OperatingLow, TemperatureAltitude.LowLimits);

        void Limit(string name, Temperature? there, Sense sense, Temperature? wanted, Source source)
        {
            if (there is { } t && wanted is { } w)
            {
                s.Check($"{name} of category {has}", t.As("°C"), sense, w.As("°C"), rule, source);
            }
            else
            {
                s.CannotTell($"The {name} of category {(there is null ? has : need)} is declared by the maker or not known here.");
            }
        }
    }

    private static void Ambient(SheetBuilder s, QualificationMatchInput input, string code)
    {
        if (input is { Altitude: null, Hottest: null, Coldest: null })
        {
            return;
        }

        if (TemperatureAltitude.Find(code) is not { } category)
        {
            s.CannotTell($"The limits of temperature and altitude category {code} are not known here.");
            return;
        }

        if (input.Altitude is { } altitude)
        {
            s.Check("altitude at the box", altitude.As("ft"), Sense.AtMost, category.Altitude.As("ft"), $"the box stays below the altitude of category {code}", TemperatureAltitude.Limits);
        }

        Reached("highest ambient temperature", input.Hottest, Sense.AtMost, category.OperatingHigh, TemperatureAltitude.Limits, Verdict.Fails);
        Reached("lowest ambient temperature, for a short time", input.Coldest, Sense.AtLeast, category.ShortTimeLow, TemperatureAltitude.Limits, Verdict.Fails);

        // Which category has which operating low is from memory only: too little to refuse a box by.
        Reached("lowest ambient temperature", input.Coldest, Sense.AtLeast, category.OperatingLow, TemperatureAltitude.LowLimits, Verdict.Caution);

        void Reached(string name, Temperature? there, Sense sense, Temperature? limit, Source source, Verdict broken)
        {
            if (there is { } t && limit is { } l)
            {
                s.Check(name, t.As("°C"), sense, l.As("°C"), $"the ambient temperature stays within that of category {code}", source, broken);
            }
            else if (there is not null)
            {
                s.CannotTell($"The limit of category {code} for the {name} is declared by the maker or not known here.");
            }
        }
    }

    // A section may stand by its name on one side and by its number on the other.
    private static string? CodeOf(Sequence<CategoryRow> rows, string section) =>
        rows.FirstOrDefault(r => Same(r.Section, section) || (QualificationSections.Number(section) is { } number && QualificationSections.Number(r.Section) == number))?.Code;

    private static string[] Stated(string? codes) => codes?.Split([',', ';', '/', ' '], StringSplitOptions.RemoveEmptyEntries) ?? [];

    private static bool Untested(string code) => Same(code, "X");

    private static bool Same(string a, string? b) => string.Equals(a.Trim(), b?.Trim(), StringComparison.OrdinalIgnoreCase);
}
