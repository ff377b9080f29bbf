namespace Fairlead.Calculations.Balance;

/// <summary>What makes the description of the loading contradict itself.</summary>
internal static class LoadingFaults
{
    public static IEnumerable<string> Of(WorstLoadingInput input) =>
    [
        .. Twice("loading station", input.Stations.Select(s => s.Name)),
        .. Twice("tank", input.Tanks.Select(t => t.Name)),
        .. Twice("group", input.Groups.Select(g => g.Name)),
        .. input.Stations.Where(s => !(s.Min <= s.Max)).Select(s => $"The least mass at '{s.Name}' ({s.Min.As("lb")}) is more than the greatest ({s.Max.As("lb")})."),
        .. UnknownGroups(input),
        .. Crossing(input),
        .. FuelShort(input),
    ];

    private static IEnumerable<string> Twice(string what, IEnumerable<string> names) =>
        names.GroupBy(n => n, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => $"There is more than one {what} '{g.Key}': give each a name of its own.");

    private static IEnumerable<string> UnknownGroups(WorstLoadingInput input) =>
        from station in input.Stations
        from name in LoadingSpace.GroupsOf(station)
        where input.Groups.All(g => g.Name != name)
        let near = Words.Nearest(name, input.Groups.Select(g => g.Name))
        select $"'{station.Name}' names the group '{name}', which is not in the table of groups{(near is null ? "" : $": did you mean '{near}'?")}.";

    private static IEnumerable<string> Crossing(WorstLoadingInput input)
    {
        var members = input.Groups.Select(g => (g.Name, Items: LoadingSpace.Members(input.Stations, g.Name).ToHashSet())).ToArray();
        return from i in Enumerable.Range(0, members.Length)
               from j in Enumerable.Range(i + 1, members.Length - i - 1)
               let a = members[i]
               let b = members[j]
               where a.Items.Overlaps(b.Items) && !a.Items.IsSubsetOf(b.Items) && !b.Items.IsSubsetOf(a.Items)
               select $"The groups '{a.Name}' and '{b.Name}' share stations but neither holds the other; this method needs groups that are nested or apart. "
                   + "Leaving one of them out is on the safe side.";
    }

    private static IEnumerable<string> FuelShort(WorstLoadingInput input)
    {
        var full = new Mass(new BurnPath(input.Tanks).Full);
        if (!(input.MinFuel <= full * (1 + LoadingSpace.Rounding)))
        {
            yield return $"The least fuel ({input.MinFuel.As("lb")}) is more than the tanks hold ({full.As("lb")}).";
        }
    }
}
