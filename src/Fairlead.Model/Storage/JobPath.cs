namespace Fairlead.Model.Storage;

/// <summary>Paths within a job folder: relative, with '/', never outside it on any system.</summary>
internal static class JobPath
{
    public static bool IsValid(string path) =>
        !path.Any(c => c is '\\' or ':' || char.IsControl(c)) && path.Split('/').All(part => part is not ("" or "." or ".."));

    /// <exception cref="ArgumentException">The path leaves the folder.</exception>
    public static void Require(string path)
    {
        if (!IsValid(path))
        {
            throw new ArgumentException($"'{path}' cannot stand in a job folder.", nameof(path));
        }
    }
}
