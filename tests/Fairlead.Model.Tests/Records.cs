using Fairlead.Model;

namespace Fairlead.Tests.Model;

/// <summary>Every record that stands in a job file, by reflection from the five roots.</summary>
internal static class Records
{
    public static readonly (string File, Type Root)[] Roots =
        [("job.yaml", typeof(WorkOrder)), ("aircraft.yaml", typeof(Aircraft)), ("parts/*.yaml", typeof(PartsCatalog)), ("change.yaml", typeof(Change)), ("stock.yaml", typeof(Stock))];

    public static IEnumerable<Type> All => Roots.SelectMany(r => From(r.Root)).Distinct();

    /// <summary>A record and all within it, each once, in the order in which they are met.</summary>
    public static IReadOnlyList<Type> From(Type root)
    {
        var met = new List<Type>();
        var open = new Queue<Type>([root]);
        while (open.TryDequeue(out var type))
        {
            if (!met.Contains(type))
            {
                met.Add(type);
                foreach (var inner in RecordShape.Of(type).Fields.Select(f => Item(f.Type)).Where(RecordShape.IsRecord))
                {
                    open.Enqueue(inner);
                }
            }
        }

        return met;
    }

    /// <summary>What a list or catalogue holds; the type itself otherwise.</summary>
    public static Type Item(Type type) => RecordShape.IsCatalog(type) || RecordShape.IsSequence(type) ? type.GetGenericArguments()[0] : type;
}
