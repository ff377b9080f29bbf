namespace Fairlead.Calculations.Wiring;

/// <summary>Input of <see cref="SupportSpacing"/>.</summary>
/// <param name="Spacing">Distance between two supports.</param>
/// <param name="Enclosed">Whether the wires lie in a trough, duct or conduit there.</param>
/// <param name="Slack">Deflection between the supports under light hand pressure, when it is to be checked.</param>
/// <param name="CanTouch">Whether the bundle could touch anything at that deflection.</param>
public sealed record SupportSpacingInput(
    [In("s", "distance between supports", "in", Min = 0, Max = 1000)] Length Spacing,
    [In("enclosed", "in a trough, duct or conduit", Default = "no")] bool Enclosed = false,
    [In("slack", "deflection under light hand pressure", "in", Min = 0, Max = 100, Default = "not checked")] Length? Slack = null,
    [In("touches", "could touch a surface at that deflection", Default = "yes")] bool CanTouch = true);

/// <summary>Spacing of supports: no more than 24 in, except in troughs, ducts and conduits; deflection no more than 1/2 in unless nothing can be touched.</summary>
/// <remarks>Check value: 24 in holds and 24.1 in does not (AC 43.13-1B 11-96 a).</remarks>
public sealed class SupportSpacing : ICalculation<SupportSpacingInput>
{
    private static readonly Source Rule = Ac4313.Paragraph("11-96 a");
    private static readonly Source SlackRule = Ac4313.Paragraph("11-118");

    /// <summary>The greatest distance between supports.</summary>
    public static Length Greatest { get; } = Length.Of(24, "in");

    /// <inheritdoc/>
    public static CalculationInfo<SupportSpacingInput> Info { get; } = new(
        "support-spacing", "Spacing of supports", Discipline.Wiring,
        "Whether a bundle is supported often enough", "s='18 in' slack='0.4 in'", Rule);

    /// <inheritdoc/>
    public static Sheet Run(SupportSpacingInput input) => SheetBuilder.Work(Info, input, s =>
    {
        if (input.Enclosed)
        {
            s.Caution("In a trough, duct or conduit the spacing rule does not apply.");
        }
        else
        {
            s.Check("support spacing", input.Spacing.As("in"), Sense.AtMost, Greatest.As("in"), "supports no more than 24 in apart", Rule);
        }

        if (input.Slack is { } slack && input.CanTouch)
        {
            s.Check("slack between supports", slack.As("in"), Sense.AtMost, Length.Of(0.5, "in").As("in"), "deflection no more than 1/2 in where a surface could be touched", SlackRule);
        }
    });
}
