using Microsoft.AspNetCore.Authorization;

namespace Fairlead.Server.Hosting;

/// <summary>What a person may do. Each endpoint names the one it needs; roles hold them.</summary>
internal static class Policies
{
    /// <summary>Look at jobs.</summary>
    public const string View = "view";

    /// <summary>Change jobs.</summary>
    public const string Edit = "edit";

    /// <summary>Enter work in the log and sign it.</summary>
    public const string Work = "work";

    /// <summary>Administer people.</summary>
    public const string Keep = "keep";

    private static readonly (string Policy, string[] Roles)[] Table =
    [
        (View, ["viewer", "technician", "inspector", "certifier", "keeper"]),
        (Work, ["technician", "inspector", "certifier"]),
        (Edit, ["technician", "inspector", "certifier", "keeper"]),
        (Keep, ["keeper"]),
    ];

    public static void Add(AuthorizationOptions options)
    {
        foreach (var (policy, roles) in Table)
        {
            options.AddPolicy(policy, p => p.RequireAuthenticatedUser().RequireRole(roles));
        }
    }
}
