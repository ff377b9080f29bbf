using System.Globalization;
using System.Text;

namespace Fairlead.Tests.Reference.Structure;

/// <summary>Blocks and plates of quadratic bricks as input of the finite element program CalculiX. Newton, millimetre, tonne.</summary>
internal sealed class CalculixDeck
{
    private static readonly (int I, int J, int K)[] Brick =
    [
        (0, 0, 0), (2, 0, 0), (2, 2, 0), (0, 2, 0), (0, 0, 2), (2, 0, 2), (2, 2, 2), (0, 2, 2), (1, 0, 0), (2, 1, 0),
        (1, 2, 0), (0, 1, 0), (1, 0, 2), (2, 1, 2), (1, 2, 2), (0, 1, 2), (0, 0, 1), (2, 0, 1), (2, 2, 1), (0, 2, 1),
    ];

    private readonly StringBuilder text = new("*NODE,NSET=ALL\n");
    private readonly Dictionary<(int I, int J, int K), int> nodes = [];
    private readonly (double From, double To, int Cells) x, y, z;
    private int elements;

    private CalculixDeck((double From, double To, int Cells) x, (double From, double To, int Cells) y, (double From, double To, int Cells) z, bool fineAtFarEdges = false)
    {
        (this.x, this.y, this.z) = (x, y, z);
        foreach (var (i, j, k) in from k in Enumerable.Range(0, (2 * z.Cells) + 1)
                                  from j in Enumerable.Range(0, (2 * y.Cells) + 1)
                                  from i in Enumerable.Range(0, (2 * x.Cells) + 1)
                                  where (i % 2) + (j % 2) + (k % 2) <= 1
                                  select (i, j, k))
        {
            nodes[(i, j, k)] = nodes.Count + 1;
            Add($"{nodes.Count},{At(i, x, fineAtFarEdges):R},{At(j, y, fineAtFarEdges):R},{At(k, z, false):R}");
        }

        Add($"*ELEMENT,TYPE=C3D20R,ELSET=BODY");
        for (var c = 0; c < x.Cells * y.Cells * z.Cells; c++)
        {
            var (a, b, h) = (2 * (c % x.Cells), 2 * (c / x.Cells % y.Cells), 2 * (c / (x.Cells * y.Cells)));
            var ids = Brick.Select(p => nodes[(a + p.I, b + p.J, h + p.K)].ToString(CultureInfo.InvariantCulture)).ToArray();
            Add($"{++elements},{string.Join(',', ids[..10])},\n{string.Join(',', ids[10..])}");
        }
    }

    /// <summary>A block from z = 0 up, held by springs at places of its lower face, loaded at one place; prints the displacements of the springs.</summary>
    public static (string Deck, int[] Springs) Block(
        (double, double, int) x, (double, double, int) y, (double, double, int) z, double modulus, double stiffness,
        (double X, double Y)[] springs, (double X, double Y, double Z) at, (double X, double Y, double Z) load)
    {
        var deck = new CalculixDeck(x, y, z);
        var held = springs.Select(s => deck.Near(s.X, s.Y, 0)).ToArray();
        foreach (var axis in Enumerable.Range(1, 3))
        {
            deck.Add($"*ELEMENT,TYPE=SPRING1,ELSET=S{axis}\n{string.Join('\n', held.Select(n => string.Create(CultureInfo.InvariantCulture, $"{++deck.elements},{n}")))}");
        }

        foreach (var axis in Enumerable.Range(1, 3))
        {
            deck.Add($"*SPRING,ELSET=S{axis}\n{axis}\n{stiffness:0.0}");
        }

        var loaded = deck.Near(at.X, at.Y, at.Z);
        deck.Add($"*NSET,NSET=HELD\n{string.Join(",\n", held)},");
        deck.Add($"*MATERIAL,NAME=M\n*ELASTIC\n{modulus:R},0.33\n*SOLID SECTION,ELSET=BODY,MATERIAL=M\n*STEP\n*STATIC\n*CLOAD");
        deck.Add($"{loaded},1,{load.X:R}\n{loaded},2,{load.Y:R}\n{loaded},3,{load.Z:R}\n*NODE PRINT,NSET=HELD\nU\n*END STEP");
        return (deck.text.ToString(), held);
    }

    /// <summary>A quarter of a plate with its symmetry, centre at the origin: under pressure it prints displacements, without it gives its first frequency.</summary>
    public static (string Deck, int Centre) QuarterPlate(double a, double b, double thickness, double modulus, double poisson, bool clamped, double pressure, double density, int cells)
    {
        var deck = new CalculixDeck((0, a / 2, cells), (0, b / 2, cells), (0, thickness, 1), fineAtFarEdges: true);
        deck.Add($"*MATERIAL,NAME=M\n*ELASTIC\n{modulus:R},{poisson:R}\n*DENSITY\n{density:R}\n*SOLID SECTION,ELSET=BODY,MATERIAL=M\n*BOUNDARY");
        foreach (var ((i, j, k), node) in deck.nodes)
        {
            var outer = i == 2 * cells || j == 2 * cells;
            deck.Add(i == 0, $"{node},1");
            deck.Add(j == 0, $"{node},2");
            deck.Add(outer && clamped, $"{node},1,3");
            deck.Add(outer && !clamped && k == 1, $"{node},3");
        }

        deck.Add(pressure != 0, $"*STEP\n*STATIC\n*DLOAD\nBODY,P2,{pressure:R}\n*NODE PRINT,NSET=ALL\nU\n*END STEP");
        deck.Add(pressure == 0, $"*STEP\n*FREQUENCY\n1\n*END STEP");
        return (deck.text.ToString(), deck.nodes[(0, 0, 1)]);
    }

    /// <summary>Displacements printed for nodes.</summary>
    public static Dictionary<int, double[]> Displacements(string dat) => dat.Split('\n')
        .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        .Where(w => w.Length == 4 && int.TryParse(w[0], NumberStyles.None, CultureInfo.InvariantCulture, out _))
        .ToDictionary(w => int.Parse(w[0], CultureInfo.InvariantCulture), w => w[1..].Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray());

    /// <summary>The first frequency printed, in hertz: number, eigenvalue, radians per time, cycles per time, imaginary part.</summary>
    public static double FirstFrequency(string dat) => dat.Split('\n')
        .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        .Where(w => w.Length == 5 && w[0] == "1").Select(w => double.Parse(w[3], CultureInfo.InvariantCulture)).First();

    // Elements beside a clamped edge are too stiff by a part of their own length: there they are made small. A middle node stands midway.
    private static double At(int index, (double From, double To, int Cells) axis, bool fine)
    {
        double Corner(int corner)
        {
            var share = (double)corner / axis.Cells;
            return axis.From + ((axis.To - axis.From) * (fine ? share * (2 - share) : share));
        }

        return (Corner(index / 2) + Corner((index + 1) / 2)) / 2;
    }

    private static int Index(double place, (double From, double To, int Cells) axis) => (int)Math.Round((place - axis.From) / (axis.To - axis.From) * 2 * axis.Cells);

    private int Near(double px, double py, double pz) => nodes[(Index(px, x), Index(py, y), Index(pz, z))];

    private void Add(FormattableString lines) => text.Append(lines.ToString(CultureInfo.InvariantCulture)).Append('\n');

    private void Add(bool when, FormattableString lines)
    {
        if (when)
        {
            Add(lines);
        }
    }
}
