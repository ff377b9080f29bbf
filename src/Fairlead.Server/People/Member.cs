using Microsoft.AspNetCore.Identity;

namespace Fairlead.Server.People;

/// <summary>Somebody who may sign in.</summary>
internal sealed class Member : IdentityUser
{
    /// <summary>The person of the jobs in whose name the member makes entries; empty for one who makes none.</summary>
    public string Person { get; set; } = "";

    /// <summary>The roles, with spaces between.</summary>
    public string Roles { get; set; } = "";

    /// <summary>Until when the password is a code the keeper handed out, to be replaced at the first sign-in; null once it was.</summary>
    public DateTimeOffset? CodeUntil { get; set; }

    /// <summary>The roles one by one.</summary>
    public string[] RoleList => Roles.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>A signed-in browser. The browser holds the key; here only its SHA-256 is kept.</summary>
internal sealed class Session
{
    public string Id { get; set; } = "";

    public string MemberId { get; set; } = "";

    public byte[] Ticket { get; set; } = [];

    /// <summary>Seconds since 1970.</summary>
    public long Until { get; set; }
}

/// <summary>A sign-in that was tried.</summary>
internal sealed class SignInTry
{
    public long Id { get; set; }

    public DateTimeOffset At { get; set; }

    /// <summary>The member's name; "?" when no member has the name that was given, because people type passwords into the wrong field.</summary>
    public string Name { get; set; } = "";

    /// <summary>The address it came from.</summary>
    public string From { get; set; } = "";

    public string Outcome { get; set; } = "";
}
