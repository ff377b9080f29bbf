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

    /// <summary>Sign as the second person who looked.</summary>
    public const string Inspect = "inspect";

    /// <summary>Sign the release.</summary>
    public const string Certify = "certify";

    /// <summary>Administer people.</summary>
    public const string Keep = "keep";

    /// <summary>The role that administers people.</summary>
    public const string Keeper = "keeper";

    /// <summary>The claim with the person of the jobs in whose name somebody makes entries.</summary>
    public const string Person = "person";

    /// <summary>All roles.</summary>
    public static readonly string[] Roles = ["viewer", "technician", "inspector", "certifier", Keeper];

    private static readonly (string Policy, string[] Roles)[] Table =
    [
        (View, Roles),
        (Work, ["technician", "inspector", "certifier"]),
        (Edit, ["technician", "inspector", "certifier", Keeper]),
        (Inspect, ["inspector", "certifier"]),
        (Certify, ["certifier"]),
        (Keep, [Keeper]),
    ];

    public static void Add(AuthorizationOptions options)
    {
        foreach (var (policy, roles) in Table)
        {
            options.AddPolicy(policy, p => p.RequireAuthenticatedUser().RequireRole(roles));
        }
    }
}
