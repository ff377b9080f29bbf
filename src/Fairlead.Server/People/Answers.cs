using Fairlead.Server.Records;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace Fairlead.Server.People;

/// <summary>Answers about people.</summary>
internal static class Answers
{
    /// <summary>What was not done, with every reason.</summary>
    public static JsonHttpResult<Refused> Refused(IdentityResult result) => Refused([.. result.Errors.Select(e => e.Description)]);

    /// <summary>What was not done, with every reason.</summary>
    public static JsonHttpResult<Refused> Refused(params string[] reasons) => TypedResults.Json(new Refused(reasons), statusCode: StatusCodes.Status422UnprocessableEntity);
}
