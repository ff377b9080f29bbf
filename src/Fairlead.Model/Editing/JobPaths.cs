using System.Collections.Immutable;

namespace Fairlead.Model.Editing;

/// <summary>What stands under the model paths of a job: <c>change/circuits/C12/from</c>.</summary>
internal static class JobPaths
{
    /// <summary>The parts of a job by the first word of a path.</summary>
    public static ImmutableSortedDictionary<string, Type> Roots { get; } = ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, new Dictionary<string, Type>(StringComparer.Ordinal)
    {
        ["job"] = typeof(WorkOrder), ["aircraft"] = typeof(Aircraft), ["change"] = typeof(Change), ["parts"] = typeof(PartsCatalog), ["stock"] = typeof(Stock),
    });

    /// <summary>The catalogues of each kind of entity, by path.</summary>
    public static ILookup<Type, string> Catalogs { get; } = Roots
        .SelectMany(r => RecordShape.Of(r.Value).Fields.Where(f => RecordShape.IsCatalog(f.Type)).Select(f => (f.Type, Path: $"{r.Key}/{f.Key}")))
        .ToLookup(x => x.Type.GetGenericArguments()[0], x => x.Path);

    /// <summary>Whether a type is a list whose entries have fields.</summary>
    public static bool IsList(Type type) => RecordShape.IsSequence(type) && RecordShape.IsRecord(type.GetGenericArguments()[0]);

    /// <summary>The type of what stands under a path, and its field; null when no job has such a path.</summary>
    public static (Type Type, Field? Field)? TypeOf(ReadOnlySpan<string> keys)
    {
        if (keys.IsEmpty || !Roots.TryGetValue(keys[0], out var type))
        {
            return null;
        }

        Field? field = null;
        foreach (var key in keys[1..])
        {
            if (RecordShape.IsCatalog(type) || RecordShape.IsSequence(type))
            {
                (type, field) = (type.GetGenericArguments()[0], null);
            }
            else if (RecordShape.IsRecord(type) && RecordShape.Of(type).Fields.FirstOrDefault(f => f.Key == key && !f.IsKey) is { } found)
            {
                (type, field) = (found.Type, found);
            }
            else
            {
                return null;
            }
        }

        return (type, field);
    }
}
