using System.Security.Claims;
using Fairlead.Server.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace Fairlead.Server.People;

/// <summary>What a signed-in member is known by: name, roles, and the person of the jobs.</summary>
internal sealed class MemberClaims(UserManager<Member> users, IOptions<IdentityOptions> options) : UserClaimsPrincipalFactory<Member>(users, options)
{
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Member user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        identity.AddClaims(user.RoleList.Select(r => new Claim(ClaimTypes.Role, r)));
        identity.AddClaim(new Claim(Policies.Person, user.Person));
        return identity;
    }
}
