using System.Collections.Concurrent;
using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>Makes the catalogues and lists of types that only the shape of a record names. Found out once a type.</summary>
internal abstract class CollectionForm
{
    private static readonly ConcurrentDictionary<Type, CollectionForm> Known = new();

    public static CollectionForm Of(Type collection) => Known.GetOrAdd(collection, type =>
        (CollectionForm)Activator.CreateInstance((RecordShape.IsCatalog(type) ? typeof(CatalogForm<>) : typeof(SequenceForm<>)).MakeGenericType(type.GetGenericArguments()))!);

    public abstract object Make(IReadOnlyCollection<object?> items);

    private sealed class CatalogForm<T> : CollectionForm
        where T : class, IEntity
    {
        public override object Make(IReadOnlyCollection<object?> items) => new Catalog<T>(items.Cast<T>());
    }

    private sealed class SequenceForm<T> : CollectionForm
    {
        public override object Make(IReadOnlyCollection<object?> items) => items.Cast<T>().ToSequence();
    }
}
