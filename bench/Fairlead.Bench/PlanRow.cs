using System.Globalization;

namespace Fairlead.Bench;

/// <summary>How one published instance was planned, as one line of a file.</summary>
/// <param name="Instance">Its name.</param>
/// <param name="Lower">Best known lower bound.</param>
/// <param name="Upper">Best known finish.</param>
/// <param name="AtOnce">Finish of the plan made at once.</param>
/// <param name="Finish">Finish of the plan found; null when none was.</param>
/// <param name="Bound">Bound found.</param>
/// <param name="Proved">Whether the plan is said to be proved.</param>
/// <param name="Faults">What the checker finds wrong with the plan.</param>
/// <param name="Seconds">Processor seconds.</param>
internal sealed record PlanRow(string Instance, int Lower, int Upper, int AtOnce, int? Finish, int Bound, bool Proved, int Faults, double Seconds)
{
    /// <summary>Names of the columns.</summary>
    public const string Columns = "instance,lower,upper,at once,finish,bound,proved,faults,seconds";

    /// <summary>Whether it is as good as the best known.</summary>
    public bool Best => Finish <= Upper;

    /// <summary>How far it lies over the best known, as a share of it; where no plan was found, that of the plan made at once.</summary>
    public double Over => ((Finish ?? AtOnce) - Upper) / (double)Upper;

    /// <summary>Whether it contradicts what is known: then one of the two is wrong.</summary>
    public bool Wrong => Faults > 0 || Finish < Lower || Bound > Upper || (Proved && Finish > Upper);

    /// <summary>Reads a line; null for one that was cut off.</summary>
    public static PlanRow? Read(string line) => line.Split(',') is not [var name, .. var rest] || rest.Length != 8 || !double.TryParse(rest[7], CultureInfo.InvariantCulture, out var seconds) ? null
        : new(name, Whole(rest[0]), Whole(rest[1]), Whole(rest[2]), rest[3].Length == 0 ? null : Whole(rest[3]), Whole(rest[4]), bool.Parse(rest[5]), Whole(rest[6]), seconds);

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Instance},{Lower},{Upper},{AtOnce},{Finish},{Bound},{Proved},{Faults},{Seconds:0.00}");

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
