
namespace Fairlead.Substantiation.Tests;

/// <summary>What can be wrong with one connector's wiring.</summary>
public enum FaultKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A wire does not read through.</summary>
    Open,

    /// <summary>The wire to ground does not read through.</summary>
    MissingGround,

    /// <summary>Two contacts stand in each other's cavities.</summary>
    Swap,

    /// <summary>The two wires of a twisted pair are exchanged.</summary>
    ReversedPair,

    /// <summary>Two neighbours touch.</summary>
    Short,

    /// <summary>A contact touches the airframe.</summary>
    ShortToGround,

    /// <summary>A shield strand touches a conductor.</summary>
    ShieldToSignal,
}

/// <summary>One single fault.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="A">The contact or wire.</param>
/// <param name="B">The other contact, or the shield.</param>
public sealed record SingleFault(FaultKind Kind, string A = "", string B = "")
{
    /// <summary>The fault in words, with the way to its place.</summary>
    public string Text => Kind switch
    {
        FaultKind.None => "no fault",
        FaultKind.Open => $"{A} is open: broken wire, contact not seated, or bad crimp; tug and push, then half-split at the disconnect",
        FaultKind.MissingGround => $"{A} does not reach ground: stud loose, terminal missing, or wire open",
        FaultKind.Swap => $"{A} and {B} are swapped, at this end or the other; compare, and swap at the easy end",
        FaultKind.ReversedPair => $"the pair {A} and {B} is reversed, at this end or the other",
        FaultKind.Short => $"{A} touches its neighbour {B}: strand, nick, or two contacts in one cavity",
        FaultKind.ShortToGround => $"{A} touches the airframe: chafed or pinched wire",
        FaultKind.ShieldToSignal => $"{A} touches {B}: a strand of the shield; it goes when the shield is lifted",
        _ => throw new InvalidOperationException($"Fault kind {Kind} has no words."),
    };

    /// <summary>Every single fault of a connector's wiring, "no fault" first.</summary>
    public static IEnumerable<SingleFault> Of(HarnessUnderTest harness)
    {
        ArgumentNullException.ThrowIfNull(harness);
        yield return new(FaultKind.None);
        foreach (var wire in harness.Wires)
        {
            yield return new(wire.From == HarnessUnderTest.Airframe || wire.To == HarnessUnderTest.Airframe ? FaultKind.MissingGround : FaultKind.Open, wire.Id);
            if (wire.Shield.Length > 0)
            {
                yield return new(FaultKind.ShieldToSignal, wire.Id, wire.Shield);
            }
        }

        foreach (var near in harness.Neighbours)
        {
            yield return new(FaultKind.Short, near.A, near.B);
        }

        var twist = harness.Wires.Where(w => w.Twist.Length > 0).SelectMany(w => new[] { (End: w.From, w.Twist), (End: w.To, w.Twist) }).ToLookup(w => w.End, w => w.Twist, StringComparer.Ordinal);
        for (var i = 0; i < harness.Contacts.Count; i++)
        {
            yield return new(FaultKind.ShortToGround, harness.Contacts[i]);
            for (var j = i + 1; j < harness.Contacts.Count; j++)
            {
                yield return new(twist[harness.Contacts[i]].Intersect(twist[harness.Contacts[j]]).Any() ? FaultKind.ReversedPair : FaultKind.Swap, harness.Contacts[i], harness.Contacts[j]);
            }
        }
    }
}
