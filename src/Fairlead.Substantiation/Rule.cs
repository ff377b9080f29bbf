namespace Fairlead.Substantiation;

/// <summary>A rule that findings name.</summary>
/// <param name="Id">Id, lower case words joined by hyphens.</param>
/// <param name="Title">Title, a few words.</param>
/// <param name="Checks">What it checks, in a phrase.</param>
/// <param name="Mend">What usually mends a finding of it; a finding itself may know better.</param>
public sealed record Rule(string Id, string Title, string Checks, string Mend);
