using System.Text.Json;
using Fairlead.Server.Desks;
using Fairlead.Server.Jobs;
using Fairlead.Server.People;
using Fairlead.Server.Records;
using Fairlead.Workbench;
using Fairlead.Workbench.Views;

namespace Fairlead.Server.Hosting;

/// <summary>The description of the API, with an example of each body that is sent.</summary>
internal static class ApiDescription
{
    private static readonly DateTimeOffset Morning = new(2027, 4, 12, 7, 30, 0, TimeSpan.Zero);

    private static readonly TabletNote Tablet = new("7d3f2c1a-95b4-4c0e-8a61-2f6f0b9d4e10", "tablet-one", Morning, Morning);

    private static readonly Dictionary<Type, object> Examples = new object[]
    {
        new NewJob("second-transponder", "demo"),
        new DeskAsked(Steps: [[new JobEdit(EditKind.Set, "change/title", "Second transponder")]]),
        new[] { new JobEdit(EditKind.Set, "change/title", "Second transponder") },
        new KeepRequest("P1", "title as in the work order"),
        new NewEntry("P1", "noted", "zone/CABIN", new Dictionary<string, string> { ["text"] = "dust behind the panel" }) { Tablet = Tablet },
        new NewResults("P1", "card,line,value\nVIS-REC1,contacts REC1 P1,2"),
        new NewPin("P1", "", "six or more signs"),
        new SignInAsk("keeper.one", "brown ladder by the river"),
        new FirstAsk("the key that the console shows", "keeper.one", "", "brown ladder by the river"),
        new PasswordAsk("brown ladder by the river", "green boat under the bridge"),
        new MemberAsk("tech.one", "P1", ["technician"]),
        new PasskeyOfferAsk("brown ladder by the river"),
        new PasskeyAsk("{\"id\":\"…\",\"rawId\":\"…\",\"type\":\"public-key\",\"response\":{}}", "hangar tablet"),
        new Dictionary<string, string?> { ["I"] = "20 A", ["Imax"] = "26 A", ["T1"] = "50 degC", ["TR"] = "200 degC" },
    }.ToDictionary(e => e.GetType());

    public static void Add(IServiceCollection services) => services.AddOpenApi(api => api.AddOperationTransformer((operation, context, _) =>
    {
        var type = context.Description.ParameterDescriptions.FirstOrDefault(p => p.Source.Id == "Body")?.Type ?? context.Description.ActionDescriptor.EndpointMetadata.OfType<Microsoft.AspNetCore.Http.Metadata.IAcceptsMetadata>().LastOrDefault()?.RequestType;
        if (type is not null && Examples.TryGetValue(type, out var example) && operation.RequestBody?.Content is { } content && content.TryGetValue("application/json", out var body))
        {
            body.Example = JsonSerializer.SerializeToNode(example, Json(context.ApplicationServices));
        }

        return Task.CompletedTask;
    }));

    private static JsonSerializerOptions Json(IServiceProvider services) => services.GetRequiredService<Microsoft.Extensions.Options.IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions>>().Value.SerializerOptions;
}
