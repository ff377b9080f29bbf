using System.Globalization;
using Fairlead.Calculations;

namespace Fairlead.Model.Reading;

/// <summary>References that need more than one record to resolve: ends of circuits, power inputs and their states, orders without cycles.</summary>
internal sealed class JobChecks
{
    private readonly Job job;
    private readonly SourceMap sources;
    private readonly ProblemList problems;
    private readonly Binder binder;

    // The part of each item: empty when it has none, null when it is in doubt.
    private readonly Dictionary<string, string?> items = new(StringComparer.Ordinal);
    private readonly HashSet<string> points = new(StringComparer.Ordinal);

    private static readonly Type[] EndKinds = [typeof(InstalledItem), typeof(FittedItem), typeof(Breaker), typeof(GroundStud), typeof(Joint), typeof(InstalledAntenna), typeof(FittedAntenna)];

    private JobChecks(Job job, SourceMap sources, ProblemList problems, Binder binder)
    {
        (this.job, this.sources, this.problems, this.binder) = (job, sources, problems, binder);
        var (aircraft, change) = (job.Aircraft, job.Change);
        foreach (var item in aircraft.Equipment!)
        {
            items[item.Id] = Sound<InstalledItem>(item.Id) ? item.Part ?? "" : null;
        }

        foreach (var item in change.Fit!)
        {
            items[item.Id] = Sound<FittedItem>(item.Id) ? item.Part : null;
        }

        points.UnionWith(aircraft.Breakers!.Select(b => b.Id).Concat(change.Breakers!.Select(b => b.Id)));
        points.UnionWith(aircraft.Grounds!.Select(g => g.Id).Concat(change.Grounds!.Select(g => g.Id)));
        points.UnionWith(change.Joints!.Select(j => j.Id));
        points.UnionWith(aircraft.Antennas!.Select(a => a.Id).Concat(change.Antennas!.Select(a => a.Id)));
    }

    /// <summary>Checks a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="sources">Where its parts stand.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <param name="binder">What was met in reading it.</param>
    /// <param name="sound">A job in which nothing was wrong; null when none is known.</param>
    public static void Check(Job job, SourceMap sources, ProblemList problems, Binder binder, Job? sound)
    {
        var checks = new JobChecks(job, sources, problems, binder);
        if (sound is not null && sound with { Change = sound.Change with { Circuits = job.Change.Circuits } } == job)
        {
            // Only circuits are others: what is said of them can be wrong, and nothing else.
            checks.Ends(job.Change.Circuits!.Where(c => !ReferenceEquals(c, sound.Change.Circuits!.Find(c.Id))));
            return;
        }

        checks.Names();
        checks.Ends(job.Change.Circuits!);
        checks.Rest();
    }

    private void Ends(IEnumerable<Circuit> circuits)
    {
        foreach (var circuit in circuits)
        {
            End(circuit.From, $"change/circuits/{circuit.Id}/from");
            End(circuit.To, $"change/circuits/{circuit.Id}/to");
            if (circuit.From == circuit.To && circuit.To != default)
            {
                Add("loop", $"change/circuits/{circuit.Id}/to", $"the circuit '{circuit.Id}' ends where it begins", $"'{circuit.To}'", "the other end of the circuit");
            }
        }
    }

    private void Rest()
    {
        foreach (var measured in job.Change.Isolations!.Where(m => m.One == m.Other))
        {
            Add("loop", $"change/isolations/{measured.Id}/other", $"the isolation '{measured.Id}' is that of one antenna from itself", $"'{measured.Other}'", "another antenna");
        }

        Removals();
        foreach (var load in job.Aircraft.Loads!)
        {
            Twice([.. load.Demands.Select(d => d.Condition)], $"aircraft/loads/{load.Id}/demands", $"load '{load.Id}'");
        }

        foreach (var feed in job.Change.Power!)
        {
            Feed(feed);
        }

        Pins();
        Order(job.Aircraft.Panels!, p => p.After, "aircraft/panels", "after");
        Order(job.Change.Tasks!, t => t.After, "change/tasks", "after");
        Ways();
        foreach (var (path, lesser, greater) in Spans.Backward(job, (type, id) => !binder.Doubtful.Contains((type, id))))
        {
            Add("backward", path, $"'{greater}' is less than '{lesser}'");
        }
    }

    private bool Sound<T>(string id) => !binder.Doubtful.Contains((typeof(T), id));

    // A part is looked into only when it was read whole: what is in doubt has had its problem.
    private EquipmentPart? Part(string? id) => id is not null && Sound<EquipmentPart>(id) ? job.Parts.Equipment!.Find(id) : null;

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
        if (end == default)
        {
            return;
        }

        var unread = !points.Contains(end.Item) && !items.ContainsKey(end.Item) && EndKinds.Any(binder.Unread.Contains);
        if (unread || (end.IsPoint && points.Contains(end.Item)))
        {
            return;
        }

        if (points.Contains(end.Item))
        {
            Add("unknown-end", path, $"'{end.Item}' is a single point without connectors", $"'{end}'", Endpoint.Expected, $"write '{end.Item}' alone");
        }
        else if (!items.TryGetValue(end.Item, out var part))
        {
            Add("unknown-end", path, $"nothing is named '{end.Item}'", $"'{end}'", Endpoint.Expected, problems.Near(end.Item, items.Keys.Concat(points)));
        }
        else if (end.IsPoint)
        {
            Add("unknown-end", path, $"'{end.Item}' is an item, so the end needs a connector and a contact", $"'{end}'", Endpoint.Expected);
        }
        else if (part is "")
        {
            Add("unknown-end", path, $"'{end.Item}' has no part in the catalogue, so its contacts are not known", $"'{end}'", fix: "give the item a part");
        }
        else if (Part(part) is { } known)
        {
            Contact(known, end.Connector, end.Contact, path, $"'{end}'");
        }
    }

    private void Contact(EquipmentPart part, string connector, string contact, string path, string found)
    {
        if (part.Connectors!.Find(connector) is not { } use)
        {
            Add("unknown-connector", path, $"'{part.Id}' has no connector '{connector}'", found, $"one of {string.Join(", ", part.Connectors.Select(c => c.Id))}", problems.Near(connector, part.Connectors.Select(c => c.Id)));
        }
        else if (job.Parts.Connectors!.Find(use.Part) is { } half && Sound<ConnectorPart>(half.Id) && !half.Cavities.Contains(contact, StringComparer.Ordinal))
        {
            Add("unknown-contact", path, $"connector '{connector}' of '{part.Id}' ({half.Id}) has no contact '{contact}'", found, fix: problems.Near(contact, half.Cavities));
        }
    }

    // Pins named in the catalogue must exist on its connectors, or a power input could never be traced.
    private void Pins()
    {
        foreach (var part in job.Parts.Equipment!.Where(p => Sound<EquipmentPart>(p.Id)))
        {
            var path = $"parts/equipment/{part.Id}";
            foreach (var contact in part.Contacts!)
            {
                Pin(part, contact.Id, $"{path}/contacts/{contact.Id}");
            }

            foreach (var input in part.Power!)
            {
                Pins(part, input.Plus, $"{path}/power/{input.Id}/plus");
                Pins(part, input.Minus, $"{path}/power/{input.Id}/minus");
            }

            foreach (var radio in part.Radios!)
            {
                Pins(part, radio.Contacts, $"{path}/radios/{radio.Id}/contacts");
            }
        }
    }

    private void Pins(EquipmentPart part, Sequence<string> pins, string path)
    {
        for (var i = 0; i < pins.Count; i++)
        {
            Pin(part, pins[i], string.Create(CultureInfo.InvariantCulture, $"{path}/{i}"));
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
        Twice([.. feed.Conditions.Select(c => c.Condition)], $"{path}/conditions", $"feed '{feed.Id}'");
        if (feed is not { Item: not null, Input: not null } || Part(items.GetValueOrDefault(feed.Item)) is not { } part)
        {
            return;
        }

        if (part.Power!.Find(feed.Input) is not { } input)
        {
            Add("unknown-input", $"{path}/input", $"'{part.Id}' has no power input '{feed.Input}'", fix: problems.Near(feed.Input, part.Power.Select(p => p.Id)));
            return;
        }

        for (var i = 0; i < feed.Conditions.Count; i++)
        {
            if (feed.Conditions[i].State is { } state && !input.States.Contains(state))
            {
                Add("unknown-state", string.Create(CultureInfo.InvariantCulture, $"{path}/conditions/{i}/state"), $"power input '{feed.Input}' of '{part.Id}' has no state '{state}'",
                    expected: $"one of {string.Join(", ", input.States.Select(s => s.Id))}", fix: problems.Near(state, input.States.Select(s => s.Id)));
            }
        }
    }

    // Of two states or currents in one condition only one can hold, and nobody could tell which was meant.
    private void Twice(string?[] conditions, string path, string where)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < conditions.Length; i++)
        {
            if (conditions[i] is { } condition && !first.TryAdd(condition, i))
            {
                Add("duplicate-condition", Index(path, i), $"the condition '{condition}' stands twice in {where}; first at {sources.Find(Index(path, first[condition]))}",
                    fix: "keep the one that applies, and name the other condition if another was meant");
            }
        }
    }

    // An item comes out once: of a second removal one line would be meant for another item, which then stays in the sums.
    private void Removals()
    {
        var first = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var removal in job.Change.Remove!.Where(r => r.Item is not null))
        {
            var path = $"change/remove/{removal.Id}/item";
            if (!first.TryAdd(removal.Item, path))
            {
                Add("removed-twice", path, $"the item '{removal.Item}' comes out twice; first at {sources.Find(first[removal.Item])}", fix: "name the item that was meant, or remove this entry");
            }
        }
    }

    private static string Index(string path, int i) => string.Create(CultureInfo.InvariantCulture, $"{path}/{i}/condition");

    private void Order<T>(Catalog<T> entities, Func<T, IEnumerable<string>> before, string path, string key)
        where T : class, IEntity
    {
        foreach (var cycle in Cycles.Of(entities.Select(e => e.Id), id => entities.Find(id) is { } entity ? before(entity) : []))
        {
            Add("cycle", $"{path}/{cycle[0]}/{key}", $"these come before each other in a circle: {string.Join(" after ", cycle)}");
        }
    }

    // Wires need a way from one point to another, and power must not be fed back to where it comes from.
    private void Ways()
    {
        foreach (var segment in job.Aircraft.Segments!.Where(s => Sound<RacewaySegment>(s.Id) && s.From == s.To))
        {
            Add("loop", $"aircraft/segments/{segment.Id}/to", $"the way '{segment.Id}' ends where it begins", $"'{segment.To}'", "another raceway point");
        }

        var feeders = job.Aircraft.Feeders!.Where(f => Sound<Feeder>(f.Id)).ToLookup(f => f.From, StringComparer.Ordinal);
        foreach (var cycle in Cycles.Of(feeders.Select(g => g.Key), bus => feeders[bus].Select(f => f.To)))
        {
            var feeder = feeders[cycle[0]].First(f => f.To == cycle[1]);
            Add("cycle", $"aircraft/feeders/{feeder.Id}", $"these buses feed each other in a circle: {string.Join(" to ", cycle)}");
        }
    }
}
