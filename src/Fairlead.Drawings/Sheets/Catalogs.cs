using Fairlead.Model;

namespace Fairlead.Drawings;

internal static class Catalogs
{
    /// <summary>A catalogue that was left out has no entities.</summary>
    public static Catalog<T> OrEmpty<T>(this Catalog<T>? catalog)
        where T : class, IEntity => catalog ?? Catalog<T>.Empty;
}
