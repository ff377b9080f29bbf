using System.Security.Claims;
using Microsoft.AspNetCore.Authorization;

namespace Fairlead.Server.Hosting;

/// <summary>A request in the name of a person of the job.</summary>
internal interface INamesPerson
{
    /// <summary>The person.</summary>
    string Who { get; }

    /// <summary>The policy it needs beside that of its endpoint; null when none.</summary>
    string? Needs => null;
}

/// <summary>Whoever signed in makes entries in their own name only. Served to this machine alone nobody signs in, and the PIN alone tells who signs.</summary>
internal sealed class OwnName(IAuthorizationService authorization) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var user = context.HttpContext.User;
        foreach (var named in context.Arguments.SelectMany(Named))
        {
            if (await Refusal(user, named) is { } why)
            {
                return TypedResults.Problem(why, statusCode: StatusCodes.Status403Forbidden);
            }
        }

        return await next(context);
    }

    private async Task<string?> Refusal(ClaimsPrincipal user, INamesPerson named)
    {
        if (named.Needs is { } policy && !(await authorization.AuthorizeAsync(user, policy)).Succeeded)
        {
            return $"Your roles do not let you {policy}.";
        }

        if (user.Identity?.AuthenticationType == LocalSignIn.SchemeName)
        {
            return null;
        }

        return user.FindFirstValue(Policies.Person) switch
        {
            null or "" => "You are not named as a person of the jobs. A keeper says who you are there.",
            var person when person != named.Who => $"You are {person} and make no entry in the name of {named.Who}.",
            _ => null,
        };
    }

    private static IEnumerable<INamesPerson> Named(object? argument) => argument switch
    {
        INamesPerson one => [one],
        IEnumerable<INamesPerson> many => many,
        _ => [],
    };
}
