using Fairlead.Calculations;

namespace Fairlead.Substantiation.Kit;

/// <summary>A need of the change before spares and stock: so much of a part, for these.</summary>
internal sealed record Need(KitKind Kind, string Part, string Name, string Unit, double Used, Sequence<string> For, string How, string Remark);

/// <summary>Gathers what the change needs. All needs of one part are one line, whatever they are for, so that its stock is counted once.</summary>
internal sealed class KitNeeds
{
    private readonly Dictionary<(string Role, string Part), Sum> sums = [];

    /// <summary>The needs, by kind and there in the order in which they came.</summary>
    public IEnumerable<Need> All => sums.Values.OrderBy(s => s.Kind).ThenBy(s => s.Order).Select(s => s.Need);

    /// <summary>Adds a need.</summary>
    /// <param name="kind">What kind of thing.</param>
    /// <param name="part">The part; empty when the job does not say which.</param>
    /// <param name="name">What it is.</param>
    /// <param name="used">How much.</param>
    /// <param name="of">What it is for.</param>
    /// <param name="how">How the quantity came about, in words that hold for every need of its kind.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="remark">What else is to be known.</param>
    public void Add(KitKind kind, string part, string name, double used, string of, string how, string unit = "each", string remark = "")
    {
        var key = part.Length > 0 ? (kind is KitKind.Tool or KitKind.TestGear ? "gear" : kind == KitKind.Drill ? "drill" : "part", part) : (kind.ToString(), name);
        if (!sums.TryGetValue(key, out var sum))
        {
            sums.Add(key, sum = new Sum(sums.Count, kind, part, name, unit));
        }

        sum.Add(used, of, how, remark);
    }

    private sealed class Sum(int order, KitKind kind, string part, string name, string unit)
    {
        private readonly OrderedSet sources = new();
        private readonly OrderedSet hows = new();
        private readonly OrderedSet remarks = new();
        private double used;

        public int Order { get; } = order;

        public KitKind Kind { get; } = kind;

        public Need Need => new(Kind, part, name, unit, used, sources.Items.ToSequence(), string.Join("; ", hows.Items), string.Join("; ", remarks.Items));

        public void Add(double more, string of, string how, string remark)
        {
            used += more;
            sources.Add(of);
            hows.Add(how);
            remarks.Add(remark);
        }
    }

    private sealed class OrderedSet
    {
        private readonly HashSet<string> known = new(StringComparer.Ordinal) { "" };

        public List<string> Items { get; } = [];

        public void Add(string text)
        {
            if (known.Add(text))
            {
                Items.Add(text);
            }
        }
    }
}
