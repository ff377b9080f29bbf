using Fairlead.Calculations;

namespace Fairlead.Model;

/// <summary>The work order: <c>job.yaml</c>.</summary>
public sealed record WorkOrder(
    [Doc("work order number")] string Number,
    [Doc("what the job is, in one line")] string Title,
    [Doc("revision of the description")] string Revision,
    [Doc("who operates the aircraft")] string Operator,
    [Doc("where the work is done")] Site Site,
    [Doc("why this change may be made, and on what data")] Approval Approval,
    [Doc("the files of the job")] JobFiles Files,
    [Doc("who works on it")] Catalog<Person>? People = null,
    [Doc("working hours")] Catalog<Shift>? Shifts = null,
    [Doc("the day the aircraft was promised for")] DateOnly? Promised = null,
    [Doc("how the work is planned")] PlanBasis? Plan = null,
    [Doc("labour times of this shop, each under the name of an activity of the labour table or of a task")] Catalog<LabourTime>? Labour = null);

/// <summary>The hangar.</summary>
public sealed record Site(
    [Doc("name of the hangar or airfield")] string Name,
    [Doc("highest temperature expected in the hangar")] Temperature? Warmest = null,
    [Doc("lowest temperature expected in the hangar")] Temperature? Coldest = null);

/// <summary>The approval basis.</summary>
public sealed record Approval(
    [Doc("minor, major, or standard change")] ApprovalBasis Basis,
    [Doc("reference of the approval; 'pending' until it is in hand")] string Reference,
    [Doc("documents the work follows")] Sequence<DataDocument> Data = default);

/// <summary>The class of the change.</summary>
public enum ApprovalBasis
{
    /// <summary>Minor change on acceptable data.</summary>
    Minor,

    /// <summary>Major change on approved data.</summary>
    Major,

    /// <summary>Standard change whose conditions are met.</summary>
    StandardChange,
}

/// <summary>A document with its revision.</summary>
public sealed record DataDocument([Doc("document")] string Document, [Doc("revision or date")] string Revision);

/// <summary>A person who works on the job.</summary>
public sealed record Person(
    [Key] string Id,
    [Doc("name")] string Name,
    [Doc("skills, for planning")] Sequence<string> Skills = default,
    [Doc("what the person may certify, and until when")] Sequence<Authorisation> Authorisations = default,
    [Doc("the shift worked")][Ref(typeof(Shift))] string? Shift = null) : IEntity;

/// <summary>An authorisation with its end.</summary>
public sealed record Authorisation([Doc("what may be certified")] string Scope, [Doc("licence or authorisation number")] string Number, [Doc("last valid day")] DateOnly Until);

/// <summary>Working hours.</summary>
public sealed record Shift(
    [Key] string Id,
    [Doc("days worked")] Sequence<DayOfWeek> Days,
    [Doc("start of work")] TimeOnly From,
    [Doc("end of work")] TimeOnly To) : IEntity;

/// <summary>How the work is planned.</summary>
public sealed record PlanBasis(
    [Doc("first day of work")] DateOnly Start,
    [Doc("how long people may work on after their shift", Min = "0 h", Max = "8 h")] Duration Overtime = default,
    [Doc("days on which nobody works")] Sequence<DateOnly> Closed = default,
    [Doc("when the aircraft may stand outside for tests; at any time when left out")] Sequence<RampHours> Ramp = default,
    [Doc("temperature kept at the structure while sealant and paint cure; the lowest of the hangar when left out", Min = "-20 degC", Max = "80 degC")] Temperature? Cure = null);

/// <summary>Hours in which the aircraft may stand outside.</summary>
public sealed record RampHours([Doc("days")] Sequence<DayOfWeek> Days, [Doc("from")] TimeOnly From, [Doc("to")] TimeOnly To);

/// <summary>A labour time of the shop.</summary>
public sealed record LabourTime([Key] string Id, [Doc("time for one")] ThreePoint Time) : IEntity;

/// <summary>The files of the job, relative to the job folder.</summary>
public sealed record JobFiles(
    [Doc("the aircraft")] string Aircraft = "aircraft.yaml",
    [Doc("the change")] string Change = "change.yaml",
    [Doc("the parts catalogue; a name with * stands for several files")] string Parts = "parts/*.yaml",
    [Doc("what lies in the stores; without it nothing is said of shortages")] string? Stock = null);
