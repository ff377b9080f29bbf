using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fairlead.Model.Editing;
using Fairlead.Workbench.Maps;
using Fairlead.Workbench.Views;

namespace Fairlead.Workbench.Routing;

/// <summary>How what is said to a desk and what it answers are written. Made when the program is built: reflection is slow in the browser's interpreter.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true)]
[JsonSerializable(typeof(JobEdit[]))]
[JsonSerializable(typeof(JobEdit[][]))]
[JsonSerializable(typeof(DeskView))]
[JsonSerializable(typeof(ImmutableArray<FormField>))]
[JsonSerializable(typeof(FormGrid))]
[JsonSerializable(typeof(SheetView))]
[JsonSerializable(typeof(DisciplineView))]
[JsonSerializable(typeof(ImmutableArray<PictureView>))]
[JsonSerializable(typeof(MapView))]
[JsonSerializable(typeof(MapAbout))]
[JsonSerializable(typeof(ImmutableArray<ScenarioView>))]
[JsonSerializable(typeof(ImmutableArray<ConnectorPage>))]
[JsonSerializable(typeof(IReadOnlyDictionary<string, string>))]
[JsonSerializable(typeof(DeskProblem))]
public sealed partial class DeskJson : JsonSerializerContext;

/// <summary>Why something asked of a desk was not done, in the form of RFC 9457.</summary>
/// <param name="Title">What kind of trouble it is.</param>
/// <param name="Status">The status.</param>
/// <param name="Detail">What is wrong, as a sentence.</param>
public sealed record DeskProblem(string Title, int Status, string Detail);
