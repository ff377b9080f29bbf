using System.Linq.Expressions;

namespace Fairlead.Calculations;

/// <summary>Reads a property of a record as what a sheet can show: an SI double, a word, rows or null.</summary>
internal static class Getter
{
    public static Func<object, object?> For(Type record, string property)
    {
        var target = Expression.Parameter(typeof(object));
        Expression value = Expression.Property(Expression.Convert(target, record), property);
        if (Nullable.GetUnderlyingType(value.Type) is { } underlying)
        {
            var present = Expression.Property(value, "HasValue");
            value = Expression.Condition(present, Plain(Expression.Convert(value, underlying)), Expression.Constant(null, typeof(object)));
        }
        else
        {
            value = Plain(value);
        }

        return Expression.Lambda<Func<object, object?>>(value, target).Compile();
    }

    private static UnaryExpression Plain(Expression value) => Expression.Convert(
        value.Type.IsGenericType && value.Type.GetGenericTypeDefinition() == typeof(Quantity<>) ? Expression.Property(value, "Si")
            : value.Type == typeof(int) ? Expression.Convert(value, typeof(double))
            : value,
        typeof(object));
}
