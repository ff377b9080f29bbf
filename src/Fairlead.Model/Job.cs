namespace Fairlead.Model;

/// <summary>The whole job: what the folder describes.</summary>
public sealed record Job(WorkOrder Order, Aircraft Aircraft, PartsCatalog Parts, Change Change, Stock? Stock = null);
