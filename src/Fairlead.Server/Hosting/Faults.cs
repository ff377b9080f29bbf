using System.Data.Common;

namespace Fairlead.Server.Hosting;

/// <summary>What is answered when something did not go as it should. What the log says of a full disk or of an altered entry is in words for the person; of everything else
/// nothing is told but that it went wrong.</summary>
internal static class Faults
{
    public static void Add(IServiceCollection services) => services.AddProblemDetails(problem => problem.CustomizeProblemDetails = context =>
    {
        if (context.Exception is { } error && Said(error) is { Length: > 0 } words)
        {
            context.ProblemDetails.Detail = words;
        }
    });

    public static void UseFaults(this WebApplication app) => app.UseExceptionHandler(new ExceptionHandlerOptions { StatusCodeSelector = Status });

    private static int Status(Exception error) => error switch
    {
        BadHttpRequestException bad => bad.StatusCode,
        IOException when Said(error).Length > 0 => StatusCodes.Status503ServiceUnavailable,
        _ => StatusCodes.Status500InternalServerError,
    };

    // The log's own words: they stand where an error of a database was put into them, and where a line of it is not what it was.
    private static string Said(Exception error) => error is IOException { InnerException: DbException } or InvalidDataException ? error.Message : "";
}
