using Fairlead.Calculations;
using Fairlead.Substantiation.Harness.Cutting;

namespace Fairlead.Documents.Tables;

/// <summary>What is to be said of a cutting plan, in sentences.</summary>
public static class CutWords
{
    /// <summary>How good the plan is, what it could not place, and its splices.</summary>
    public static string Of(CutPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<string> words = [];
        if (plan.Plan is not { } cut)
        {
            words.Add("The job does not say what is on hand, so no cuts are planned.");
        }
        else
        {
            words.Add(cut.TooLong.Count + cut.NotPlaced.Count == plan.Pieces.Count && plan.Pieces.Count > 0 ? "Nothing of it can be cut from what is on hand."
                : cut.NotPlaced.Count > 0 ? $"{(cut.IsOptimal ? "What is on hand does not suffice for all pieces, whatever is cut from what" : "No plan was found that cuts all pieces from what is on hand")}; {Figures.Count(plan.Pieces.Count - cut.TooLong.Count - cut.NotPlaced.Count, "piece", "pieces")} can be cut."
                : cut.IsOptimal ? $"{Figures.Count(cut.NewReels, "new reel", "new reels")} cut into, as few as can be."
                : $"{Figures.Count(cut.NewReels, "new reel", "new reels")} cut into; no plan does with fewer than {NumberFormat.Text(cut.NewReelsBound)}.");
            Add(words, cut.Lengths.Count == 0 ? "On hand is no length that is long enough for" : "Longer than any reel on hand", cut.TooLong, plan);
            Add(words, "Not cut", cut.NotPlaced, plan);
        }

        if (plan.Splices > 0)
        {
            words.Add($"{Figures.Count(plan.Splices, "splice", "splices")}, where the change allows it.");
        }

        if (plan.Unknown.Count > 0)
        {
            words.Add($"Length not known: {string.Join(", ", plan.Unknown)}.");
        }

        return string.Join(' ', words);
    }

    private static void Add(List<string> words, string what, Sequence<int> pieces, CutPlan plan)
    {
        if (pieces.Count > 0)
        {
            words.Add($"{what}: {string.Join(", ", pieces.Select(i => $"{plan.Pieces[i].Name} ({NumberFormat.Text(plan.Pieces[i].Millimetres)} mm)"))}.");
        }
    }
}
