using Fairlead.Calculations;

namespace Fairlead.Substantiation.Harness.Cutting;

/// <summary>One kind of stock that pieces are cut from.</summary>
/// <param name="Name">What it is called on the cutting list.</param>
/// <param name="Length">Its length in mm, above 0.</param>
/// <param name="Count">How many there are; null where more can be drawn.</param>
/// <param name="IsNew">Whether each one drawn is a new reel opened; false for a remnant or a reel already open.</param>
public sealed record Stock(string Name, long Length, int? Count, bool IsNew);

/// <summary>How pieces are cut and how far <see cref="CuttingStock.Solve"/> goes. The limit counts work, not time, so that a plan is the same on every
/// machine.</summary>
/// <param name="Kerf">Length lost at each cut in mm, 0 or more; the end of the stock needs no cut.</param>
/// <param name="Usable">A length left over of this much or more in mm goes back to store; less is scrap. Null counts all that is left as scrap.</param>
/// <param name="StepLimit">Most steps in filling stock lengths; 0 gives the first plan.</param>
public sealed record CuttingOptions(long Kerf = 0, long? Usable = null, int StepLimit = 5_000_000);

/// <summary>One stock length and what is cut from it.</summary>
/// <param name="Stock">The stock.</param>
/// <param name="Pieces">Numbers of the pieces, in the order they were given.</param>
/// <param name="Left">Length left over in mm, after the last cut.</param>
public sealed record CutLength(Stock Stock, Sequence<int> Pieces, long Left);

/// <summary>Which piece is cut from which stock, and how far the plan can be from the best.</summary>
/// <param name="Lengths">Stock lengths used, in the order they are best cut: new reels last.</param>
/// <param name="TooLong">Numbers of the pieces that no stock is long enough for; they are never spliced.</param>
/// <param name="NotPlaced">Numbers of the pieces that the stock did not suffice for in this plan.</param>
/// <param name="NewReels">New reels opened.</param>
/// <param name="NewReelsBound">No plan for the same pieces opens fewer.</param>
/// <param name="Scrap">Sum of the lengths left over that are too short to keep, in mm, kerf not counted.</param>
/// <param name="ScrapBound">No plan that opens as few new reels leaves less scrap.</param>
/// <param name="IsOptimal">Whether the search ended before its limit: no plan opens fewer new reels and none with as few leaves less scrap; with pieces
/// not placed, no plan places all.</param>
public sealed record CuttingPlan(
    Sequence<CutLength> Lengths, Sequence<int> TooLong, Sequence<int> NotPlaced, int NewReels, int NewReelsBound, long Scrap, long ScrapBound, bool IsOptimal);
