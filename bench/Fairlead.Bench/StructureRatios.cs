using System.Diagnostics;
using System.Globalization;
using Fairlead.Calculations;
using Fairlead.Calculations.Radio;
using Fairlead.Calculations.Structure;
using Fairlead.Tests.Reference.Structure;

namespace Fairlead.Bench;

/// <summary>Ratios of structure and antennas within one run: a fastener group against one fastener by hand and against a finite element run of the
/// same group, and isolation of all pairs of antennas by their number.</summary>
internal static class StructureRatios
{
    private static readonly int[] Antennas = [10, 100, 500];
    private static readonly (double X, double Y)[] Bolts = [(60, 40), (-60, 40), (-60, -40), (60, -40)];
    private static readonly Sequence<FastenerRow> Group =
        Bolts.Select((b, i) => new FastenerRow(string.Create(CultureInfo.InvariantCulture, $"f{i}"), Length.Of(b.X, "mm"), Length.Of(b.Y, "mm"), Shear: Force.Of(2126, "lbf"), Tension: Force.Of(2210, "lbf"))).ToSequence();

    private static double sink;

    public static void Print(TextWriter writer)
    {
        Fasteners(writer);
        Pairs(writer);
    }

    private static void Fasteners(TextWriter writer)
    {
        var hand = Each(200_000, i => sink += Hand(1000 + (i % 7)));
        var forces = Each(20_000, i => sink += FastenerForces.Of(Input(1000 + (i % 7))).Forces[0].X.Si);
        var sheet = Each(5000, i => sink += FastenerGroup.Run(Input(1000 + (i % 7)))["u"].Si);
        writer.WriteLine("four fasteners | a second | times one fastener by hand");
        Row(writer, "one fastener by hand, no sheet", hand, hand);
        Row(writer, "forces of the group", forces, hand);
        Row(writer, "sheet of the group", sheet, hand);
        if ((Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, "ccx"))))
        {
            Row(writer, "CalculiX, a block on four springs", Elements(), hand);
        }
        else
        {
            writer.WriteLine("CalculiX is not on the path: not compared");
        }
    }

    // Direct and eccentric shear and the tension of the overturning moment, of the fastener that has most of them.
    private static double Hand(double load)
    {
        var squares = 4 * ((60.0 * 60) + (40 * 40));
        var twist = load * 150;
        var (x, y) = (twist * 40 / squares, (load / 4) + (twist * 60 / squares));
        var tension = load * 60 * 40 / (4 * 40.0 * 40);
        return (Math.Sqrt((x * x) + (y * y)) / 9457) + (tension / 9831);
    }

    private static FastenerGroupInput Input(double load) =>
        new(Group, default, new Force(-load), default, Length.Of(150, "mm"), default, Length.Of(60, "mm"), Tilt.Centroid);

    private static double Elements()
    {
        var folder = Directory.CreateTempSubdirectory("fairlead-");
        try
        {
            var (deck, _) = CalculixDeck.Block((-80, 160, 12), (-60, 60, 6), (0, 60, 1), 7e8, 5000, Bolts, (150, 0, 60), (0, -1000, 0));
            File.WriteAllText(Path.Combine(folder.FullName, "block.inp"), deck);
            return Each(3, _ =>
            {
                using var run = Process.Start(new ProcessStartInfo("ccx", ["-i", Path.Combine(folder.FullName, "block")]) { RedirectStandardOutput = true, UseShellExecute = false, WorkingDirectory = folder.FullName })!;
                run.StandardOutput.ReadToEnd();
                run.WaitForExit();
                if (run.ExitCode != 0)
                {
                    throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"ccx ended with {run.ExitCode}."));
                }
            });
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Pairs(TextWriter writer)
    {
        writer.WriteLine("antennas | pairs | whole, ms | per pair against the smallest");
        var first = 0.0;
        foreach (var count in Antennas)
        {
            var pairs = count * (count - 1);
            var one = Each(count < 500 ? 3 : 1, _ => All(count)) / pairs;
            first = first == 0 ? one : first;
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} | {pairs} | {one * pairs * 1000:0.0} | {one / first:0.00}"));
        }
    }

    // Along a fuselage of 40 m, one beside the other; each sends to each other.
    private static void All(int count)
    {
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                if (i != j)
                {
                    var distance = new Length(0.5 + (Math.Abs(i - j) * 40.0 / count));
                    sink += AntennaIsolation.Run(new(new Frequency(1.09e9), distance, AntennaPair.MonopolesOnOnePlane))["I"].Si;
                }
            }
        }
    }

    // Seconds of one, the best of three rounds after one to warm up.
    private static double Each(int times, Action<int> run)
    {
        var best = double.MaxValue;
        for (var round = 0; round < 4; round++)
        {
            var clock = Stopwatch.StartNew();
            for (var i = 0; i < times; i++)
            {
                run(i);
            }

            best = round == 0 ? best : Math.Min(best, clock.Elapsed.TotalSeconds / times);
        }

        return best;
    }

    private static void Row(TextWriter writer, string name, double seconds, double hand) =>
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name} | {1 / seconds:0} | {seconds / hand:0}"));
}
