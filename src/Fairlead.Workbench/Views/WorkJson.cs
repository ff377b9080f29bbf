using System.Text.Json;
using System.Text.Json.Serialization;

namespace Fairlead.Workbench.Views;

/// <summary>How the views of the work are written. Made when the program is built: reflection would hold up the page in the browser's interpreter.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true)]
[JsonSerializable(typeof(KitView))]
[JsonSerializable(typeof(TaskView[]))]
[JsonSerializable(typeof(TestView[]))]
[JsonSerializable(typeof(DiagnosisView))]
[JsonSerializable(typeof(ReleaseView))]
[JsonSerializable(typeof(HandoverView))]
[JsonSerializable(typeof(PlanSummaryView))]
[JsonSerializable(typeof(LogMark))]
[JsonSerializable(typeof(SealKey))]
[JsonSerializable(typeof(PhotographView[]))]
[JsonSerializable(typeof(CutPlanView[]))]
[JsonSerializable(typeof(MarkView[]))]
[JsonSerializable(typeof(EnteredView))]
public sealed partial class WorkJson : JsonSerializerContext;
