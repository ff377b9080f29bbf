using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Reflection;
using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>A key of a record as it stands in a file.</summary>
internal sealed record Field(string Key, Type Type, string Meaning, string Min, string Max, bool IsKey, bool Required, object? Default, RefAttribute? Ref);

/// <summary>The keys of a record, read once from its constructor. Reader, schema writer and starter all go by it.</summary>
internal sealed class RecordShape
{
    private static readonly ConcurrentDictionary<Type, RecordShape> Known = new();
    private static readonly ConcurrentDictionary<Type, Dimension> Dimensions = new();
    private readonly ConstructorInvoker maker;

    private RecordShape(Type type)
    {
        var constructor = type.GetConstructors().OrderByDescending(c => c.GetParameters().Length).First();
        Fields = [.. constructor.GetParameters().Select(FieldOf)];
        Keys = [.. Fields.Where(f => !f.IsKey).Select(f => f.Key)];
        maker = ConstructorInvoker.Create(constructor);
    }

    public ImmutableArray<Field> Fields { get; }

    /// <summary>The keys that a file may hold, in order.</summary>
    public ImmutableArray<string> Keys { get; }

    public static RecordShape Of(Type type) => Known.GetOrAdd(type, t => new RecordShape(t));

    public object Construct(object?[] values) => maker.Invoke(values.AsSpan());

    public static bool IsRecord(Type type) => type.IsClass && type != typeof(string) && !IsCatalog(type) && type.Namespace == typeof(RecordShape).Namespace;

    public static bool IsCatalog(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Catalog<>);

    public static bool IsSequence(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Sequence<>);

    public static bool IsQuantity(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Quantity<>);

    public static Dimension DimensionOf(Type quantity) =>
        Dimensions.GetOrAdd(quantity, type => (Dimension)type.GetProperty("Dimension", BindingFlags.Public | BindingFlags.Static)!.GetValue(null)!);

    private static Field FieldOf(ParameterInfo p)
    {
        var doc = p.GetCustomAttribute<DocAttribute>();
        var type = Nullable.GetUnderlyingType(p.ParameterType) ?? p.ParameterType;
        var (min, max) = IsQuantity(type) ? Sane.Of(DimensionOf(type)) : ("", "");
        return new Field(
            Words.Kebab(p.Name!), type, doc?.Meaning ?? "", doc?.Min is { Length: > 0 } least ? least : min, doc?.Max is { Length: > 0 } most ? most : max, p.GetCustomAttribute<KeyAttribute>() is not null,
            !p.HasDefaultValue, DefaultOf(p, type), p.GetCustomAttribute<RefAttribute>());
    }

    // An optional catalogue that is left out is the empty one, so that nobody downstream meets a null.
    private static object? DefaultOf(ParameterInfo p, Type type) =>
        IsCatalog(type) ? type.GetProperty("Empty", BindingFlags.Public | BindingFlags.Static)!.GetValue(null)
        : p is { HasDefaultValue: true, DefaultValue: { } value } ? (type.IsEnum ? Enum.ToObject(type, value) : value)
        : p.ParameterType.IsValueType && Nullable.GetUnderlyingType(p.ParameterType) is null ? Activator.CreateInstance(p.ParameterType) : null;
}
