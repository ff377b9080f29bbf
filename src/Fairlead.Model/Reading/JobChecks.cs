using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>References that need more than one record to resolve: ends of circuits, power inputs and their states, orders without cycles.</summary>
internal sealed class JobChecks
{
    private readonly Job job;
    private readonly SourceMap sources;
    private readonly ProblemList problems;
    private readonly Dictionary<string, EquipmentPart?> items = new(StringComparer.Ordinal);
    private readonly HashSet<string> points = new(StringComparer.Ordinal);

    private JobChecks(Job job, SourceMap sources, ProblemList problems)
    {
        (this.job, this.sources, this.problems) = (job, sources, problems);
        var (aircraft, change) = (job.Aircraft, job.Change);
        foreach (var item in aircraft.Equipment!)
        {
            items[item.Id] = job.Parts.Equipment!.Find(item.Part);
        }

        foreach (var item in change.Fit!)
        {
            items[item.Id] = job.Parts.Equipment!.Find(item.Part);
        }

        points.UnionWith(aircraft.Breakers!.Select(b => b.Id).Concat(change.Breakers!.Select(b => b.Id)));
        points.UnionWith(aircraft.Grounds!.Select(g => g.Id).Concat(change.Grounds!.Select(g => g.Id)));
        points.UnionWith(change.Joints!.Select(j => j.Id));
        points.UnionWith(aircraft.Antennas!.Select(a => a.Id).Concat(change.Antennas!.Select(a => a.Id)));
    }

    public static void Check(Job job, SourceMap sources, ProblemList problems)
    {
        var checks = new JobChecks(job, sources, problems);
        checks.Names();
        foreach (var circuit in job.Change.Circuits!)
        {
            checks.End(circuit.From, $"change/circuits/{circuit.Id}/from");
            checks.End(circuit.To, $"change/circuits/{circuit.Id}/to");
        }

        foreach (var feed in job.Change.Power!)
        {
            checks.Feed(feed);
        }

        checks.Pins();
        checks.Order(job.Aircraft.Panels!, p => p.After, "aircraft/panels", "after");
        checks.Order(job.Change.Tasks!, t => t.After, "change/tasks", "after");
    }

    private void Add(string code, string path, string message, string found = "", string expected = "", string fix = "") =>
        problems.Add(code, sources.Find(path) ?? new Location(JobReader.Root, 1, 1), message, found, expected, fix);

    // Ends of circuits name items and points alike, so one name may not stand for two things.
    private void Names()
    {
        var (aircraft, change) = (job.Aircraft, job.Change);
        var all = aircraft.Equipment!.Select(e => (Id: e.Id, Path: $"aircraft/equipment/{e.Id}"))
            .Concat(aircraft.Antennas!.Select(e => (Id: e.Id, Path: $"aircraft/antennas/{e.Id}")))
            .Concat(aircraft.Breakers!.Select(e => (Id: e.Id, Path: $"aircraft/breakers/{e.Id}")))
            .Concat(aircraft.Grounds!.Select(e => (Id: e.Id, Path: $"aircraft/grounds/{e.Id}")))
            .Concat(change.Fit!.Select(e => (Id: e.Id, Path: $"change/fit/{e.Id}")))
            .Concat(change.Antennas!.Select(e => (Id: e.Id, Path: $"change/antennas/{e.Id}")))
            .Concat(change.Breakers!.Select(e => (Id: e.Id, Path: $"change/breakers/{e.Id}")))
            .Concat(change.Grounds!.Select(e => (Id: e.Id, Path: $"change/grounds/{e.Id}")))
            .Concat(change.Joints!.Select(e => (Id: e.Id, Path: $"change/joints/{e.Id}")));
        foreach (var group in all.GroupBy(x => x.Id, StringComparer.Ordinal).Where(g => g.Skip(1).Any()))
        {
            Add("duplicate-name", group.Skip(1).First().Path, $"'{group.Key}' already names something else, at {sources.Find(group.First().Path)}", fix: "give it another name");
        }
    }

    private void End(Endpoint end, string path)
    {
        if (end.IsPoint && points.Contains(end.Item))
        {
            return;
        }

        if (!items.TryGetValue(end.Item, out var part))
        {
            Add("unknown-end", path, $"nothing is named '{end.Item}'", $"'{end}'", Endpoint.Expected, Binder.Hint(end.Item, items.Keys.Concat(points)));
        }
        else if (end.IsPoint)
        {
            Add("unknown-end", path, $"'{end.Item}' is an item, so the end needs a connector and a contact", $"'{end}'", Endpoint.Expected);
        }
        else if (part is null)
        {
            Add("unknown-end", path, $"'{end.Item}' has no part in the catalogue, so its contacts are not known", $"'{end}'", fix: "give the item a part");
        }
        else
        {
            Contact(part, end.Connector, end.Contact, path, $"'{end}'");
        }
    }

    private void Contact(EquipmentPart part, string connector, string contact, string path, string found)
    {
        if (part.Connectors!.Find(connector) is not { } use)
        {
            Add("unknown-connector", path, $"'{part.Id}' has no connector '{connector}'", found, $"one of {string.Join(", ", part.Connectors.Select(c => c.Id))}", Binder.Hint(connector, part.Connectors.Select(c => c.Id)));
        }
        else if (job.Parts.Connectors!.Find(use.Part) is { } half && !half.Cavities.Contains(contact, StringComparer.Ordinal))
        {
            Add("unknown-contact", path, $"connector '{connector}' of '{part.Id}' ({half.Id}) has no contact '{contact}'", found, fix: Binder.Hint(contact, half.Cavities));
        }
    }

    // Pins named in the catalogue must exist on its connectors, or a power input could never be traced.
    private void Pins()
    {
        foreach (var part in job.Parts.Equipment!)
        {
            var path = $"parts/equipment/{part.Id}";
            foreach (var contact in part.Contacts!)
            {
                Pin(part, contact.Id, $"{path}/contacts/{contact.Id}");
            }

            foreach (var input in part.Power!)
            {
                foreach (var pin in input.Plus.Concat(input.Minus))
                {
                    Pin(part, pin, $"{path}/power/{input.Id}");
                }
            }
        }
    }

    private void Pin(EquipmentPart part, string pin, string path)
    {
        var dash = pin.IndexOf('-', StringComparison.Ordinal);
        if (dash <= 0)
        {
            Add("bad-pin", path, "a pin is a connector and a contact", $"'{pin}'", "for example 'P1-12'");
        }
        else
        {
            Contact(part, pin[..dash], pin[(dash + 1)..], path, $"'{pin}'");
        }
    }

    private void Feed(PowerFeed feed)
    {
        var path = $"change/power/{feed.Id}";
        if (items.GetValueOrDefault(feed.Item) is not { } part)
        {
            return;
        }

        if (part.Power!.Find(feed.Input) is not { } input)
        {
            Add("unknown-input", $"{path}/input", $"'{part.Id}' has no power input '{feed.Input}'", fix: Binder.Hint(feed.Input, part.Power.Select(p => p.Id)));
            return;
        }

        for (var i = 0; i < feed.Conditions.Count; i++)
        {
            if (!input.States.Contains(feed.Conditions[i].State))
            {
                Add("unknown-state", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{path}/conditions/{i}/state"), $"power input '{feed.Input}' of '{part.Id}' has no state '{feed.Conditions[i].State}'",
                    expected: $"one of {string.Join(", ", input.States.Select(s => s.Id))}", fix: Binder.Hint(feed.Conditions[i].State, input.States.Select(s => s.Id)));
            }
        }
    }

    private void Order<T>(Catalog<T> entities, Func<T, Sequence<string>> before, string path, string key)
        where T : class, IEntity
    {
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entity in entities)
        {
            if (Cycle(entities, before, entity.Id, done) is { } cycle)
            {
                Add("cycle", $"{path}/{cycle[0]}/{key}", $"these come before each other in a circle: {string.Join(" after ", cycle)}");
            }
        }
    }

    // Depth-first without recursion: a chain as long as the file is deep must not exhaust the stack.
    private static List<string>? Cycle<T>(Catalog<T> entities, Func<T, Sequence<string>> before, string start, HashSet<string> done)
        where T : class, IEntity
    {
        var path = new List<string>();
        var onPath = new HashSet<string>(StringComparer.Ordinal);
        var stack = new Stack<(string Id, int Next)>([(start, 0)]);
        while (stack.TryPop(out var top))
        {
            if (top.Next == 0)
            {
                if (done.Contains(top.Id))
                {
                    continue;
                }

                if (!onPath.Add(top.Id))
                {
                    done.UnionWith(onPath);
                    return [.. path.SkipWhile(id => id != top.Id), top.Id];
                }

                path.Add(top.Id);
            }

            var next = entities.Find(top.Id) is { } entity ? before(entity) : default;
            if (top.Next < next.Count)
            {
                stack.Push((top.Id, top.Next + 1));
                stack.Push((next[top.Next], 0));
            }
            else
            {
                path.RemoveAt(path.Count - 1);
                onPath.Remove(top.Id);
                done.Add(top.Id);
            }
        }

        return null;
    }
}
