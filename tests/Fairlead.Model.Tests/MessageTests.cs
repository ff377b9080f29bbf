namespace Fairlead.Tests.Model;

/// <summary>One fault each in the starter job, and the whole of what the reader says. '¦' marks where the fault stands.</summary>
public sealed class MessageTests
{
    private const char Here = '¦';

    public static TheoryData<string, string, string, string> Faults => new()
    {
        // keys
        { "aircraft.yaml", "ceiling: 18000 ft", "¦ceilling: 18000 ft", "'ceilling' is not a key here; expected one of registration, type, serial, certification, ceiling, zones, weighing, envelope, pressurised, speeds, load-factors, panels, nodes, segments, structures, grounds, sources, buses, feeders, breakers, batteries, conditions, loads, equipment, antennas, compass, stations, station-groups, tanks, instruments, tools, sections, circuit-letters; did you mean 'ceiling'?" },
        { "aircraft.yaml", "weighing:\n", "weighing:\n  ¦colour: blue\n", "'colour' is not a key here; expected one of date, reference, mass, fs, bl, wl, points, adjustments" },
        { "aircraft.yaml", "buses:\n", "¦busses:\n", "'busses' is not a key here; expected one of registration, type, serial, certification, ceiling, zones, weighing, envelope, pressurised, speeds, load-factors, panels, nodes, segments, structures, grounds, sources, buses, feeders, breakers, batteries, conditions, loads, equipment, antennas, compass, stations, station-groups, tanks, instruments, tools, sections, circuit-letters; did you mean 'buses'?" },
        { "aircraft.yaml", "  mass: 2100 lb\n", "", "aircraft.yaml:110:3: 'mass' is missing; expected mass: empty weight" },
        { "change.yaml", "{ from: CB2, to: REC1 P1-1, function: P, signal: power }", "¦{ from: CB2, function: P, signal: power }", "'to' is missing; expected to: other end" },
        { "aircraft.yaml", "serial: \"0001\"\n", "serial: \"0001\"\n¦serial: \"0002\"\n", "'serial' stands twice; first at aircraft.yaml:8:1" },
        { "parts/wiring.yaml", "clamps:\n", "¦wires:\n  W30: { name: Wire, family: W, gauge: 30, conductor: tinned-copper, rating: 150 degC, diameter: 0.03 in, mass: 1 lb/1000ft }\nclamps:\n", "'wires' stands twice; first at parts/wiring.yaml:7:1" },

        // values
        { "aircraft.yaml", "ceiling: 18000 ft", "ceiling: ¦18000 fet", "'ceiling' cannot be read; found '18000 fet'; expected a number with a unit of length (in, ft, m, mm, cm, km, nmi, mil), for example '12.5 in'" },
        { "aircraft.yaml", "ceiling: 18000 ft", "ceiling: ¦18000", "'ceiling' cannot be read; found '18000'; expected a number with a unit of length (in, ft, m, mm, cm, km, nmi, mil), for example '12.5 in'; add the unit" },
        { "aircraft.yaml", "ceiling: 18000 ft", "ceiling: ¦18000 kg", "'ceiling' cannot be read; found '18000 kg'; expected a number with a unit of length (in, ft, m, mm, cm, km, nmi, mil), for example '12.5 in'" },
        { "aircraft.yaml", "ceiling: 18000 ft", "ceiling: ¦180000 ft", "'ceiling' (greatest operating altitude) is not a sensible value; found '180000 ft'; expected 0 ft to 60000 ft" },
        { "aircraft.yaml", "ceiling: 18000 ft", "ceiling:¦", "'ceiling' cannot be read; found nothing; expected a number with a unit of length (in, ft, m, mm, cm, km, nmi, mil), for example '12.5 in'" },
        { "aircraft.yaml", "ceiling: 18000 ft", "ceiling: ¦18000,5 ft", "'ceiling' cannot be read; found '18000,5 ft'; expected a number with a unit of length (in, ft, m, mm, cm, km, nmi, mil), for example '12.5 in'; write the decimal point as '.': 18000.5 ft" },
        { "aircraft.yaml", "kind: alternator", "kind: ¦alternater", "'kind' cannot be read; found 'alternater'; expected one of generator, alternator, external; did you mean 'alternator'?" },
        { "aircraft.yaml", "pressurised: no", "pressurised: ¦never", "'pressurised' cannot be read; found 'never'; expected 'yes' or 'no'" },
        { "aircraft.yaml", "date: 2026-03-02", "date: ¦2026-02-30", "'date' cannot be read; found '2026-02-30'; expected a date, for example 2027-03-31" },
        { "job.yaml", "from: 07:30", "from: ¦7.30", "'from' cannot be read; found '7.30'; expected a time of day, for example 07:30" },
        { "job.yaml", "[monday,", "[¦mondag,", "'days' cannot be read; found 'mondag'; expected one of sunday, monday, tuesday, wednesday, thursday, friday, saturday; did you mean 'monday'?" },
        { "aircraft.yaml", "fasteners: 6", "fasteners: ¦six", "'fasteners' cannot be read; found 'six'; expected a whole number" },
        { "aircraft.yaml", "gauge: 20", "gauge: ¦41", "'gauge' cannot be read; found '41'; expected a wire gauge from 40 to 0000, for example '22' or '00'" },
        { "change.yaml", "slack: 10 %", "slack: ¦110 %", "'slack' (slack added to each wire's route, as a share of it) is not a sensible value; found '110 %'; expected 0 % to 100 %" },
        { "aircraft.yaml", "panels: [AFT]", "panels: ¦AFT", "'panels' is a list; found 'AFT'; expected items in [ ] or each on a line of its own after '- '" },
        { "aircraft.yaml", "type: Example single", "type: ¦[Example, single]", "'type' is a single value; found a list; expected a word or words" },
        { "aircraft.yaml", "compass: { fs: 55 in, bl: 0 in, wl: 52 in }", "compass: ¦55 in", "keys with values are needed here; found '55 in'; expected fs, bl, wl" },
        { "aircraft.yaml", "tools:\n  CT1: { name: Crimp tool, calibration-due: 2030-06-30 }\n  TR1: { name: Torch }", "tools:\n  ¦- Crimp tool", "entries by id are needed here; found a list; expected an id, a colon, and below it the keys of the entry" },
        { "aircraft.yaml", "  G2: {", "  ¦G 2: {", "this cannot be an id; found 'G 2'; expected up to 64 letters, digits, '.', '_' and '-'" },
        { "aircraft.yaml", "type: Example single", "type: ¦\"Example\\asingle\"", "'type' holds a character that cannot be printed; found 'Example\uFFFDsingle'" },

        // ids
        { "aircraft.yaml", "  G2: {", "  ¦G1: {", "the id 'G1' stands twice; first at aircraft.yaml:60:3" },
        { "parts/equipment.yaml", "equipment:\n", "wires:\n  ¦W24: { name: Wire, family: W, gauge: 24, conductor: tinned-copper, rating: 150 degC, diameter: 0.04 in, mass: 2 lb/1000ft }\nequipment:\n", "parts/wiring.yaml:8:3: the id 'W24' stands twice; first at parts/equipment.yaml:7:3" },
        { "change.yaml", "  CB2: { name: RECORDER, bus: MAIN, part: BR3, node: N1 }", "  CB2: { name: RECORDER, bus: ¦MIAN, part: BR3, node: N1 }", "there is no bus 'MIAN'; did you mean 'MAIN'?" },
        { "aircraft.yaml", "from: ALT1, to: MAIN", "from: ¦ALT2, to: MAIN", "there is no power source, battery or bus 'ALT2'; did you mean 'ALT1'?" },
        { "aircraft.yaml", "  S1: { from: N1", "  S1: { from: ¦N9", "there is no raceway node 'N9'; did you mean 'N1'?" },
        { "change.yaml", "part: RECORDER\n", "part: ¦RECODER\n", "there is no equipment part 'RECODER'; did you mean 'RECORDER'?" },
        { "change.yaml", "R1: { item: CLK1,", "R1: { item: ¦TRANSPONDER,", "there is no installed item or installed antenna 'TRANSPONDER'" },
        { "change.yaml", "breakers:\n  CB2: {", "breakers:\n  CB3: { name: SPARE, bus: MAIN, part: BR3, node: N1 }\n  ¦CB1: { name: SPARE, bus: MAIN, part: BR3, node: N1 }\n  CB2: {", "'CB1' already names something else, at aircraft.yaml:70:3; give it another name" },

        // ends of circuits
        { "change.yaml", "to: REC1 P1-1,", "to: ¦REC1 P1,", "'to' cannot be read; found 'REC1 P1'; expected an end such as 'A1 P1-12' (item, connector half, contact) or 'CB12' (breaker, ground, splice or terminal)" },
        { "change.yaml", "to: REC1 P1-1,", "to: ¦REC1 P1-1 2,", "'to' cannot be read; found 'REC1 P1-1 2'; expected an end such as 'A1 P1-12' (item, connector half, contact) or 'CB12' (breaker, ground, splice or terminal)" },
        { "change.yaml", "to: REC1 P1-1,", "to: ¦REC1,", "'REC1' is an item, so the end needs a connector and a contact; found 'REC1'; expected an end such as 'A1 P1-12' (item, connector half, contact) or 'CB12' (breaker, ground, splice or terminal)" },
        { "change.yaml", "to: REC1 P1-1,", "to: ¦REC2 P1-1,", "nothing is named 'REC2'; found 'REC2 P1-1'; expected an end such as 'A1 P1-12' (item, connector half, contact) or 'CB12' (breaker, ground, splice or terminal); did you mean 'REC1'?" },
        { "change.yaml", "to: REC1 P1-1,", "to: ¦REC1 P2-1,", "'RECORDER' has no connector 'P2'; found 'REC1 P2-1'; expected one of P1; did you mean 'P1'?" },
        { "change.yaml", "to: REC1 P1-1,", "to: ¦REC1 P1-10,", "connector 'P1' of 'RECORDER' (CONN9) has no contact '10'; found 'REC1 P1-10'; did you mean '1'?" },
        { "change.yaml", "to: REC1 P1-1,", "to: ¦RAD1 P1-1,", "'RAD1' has no part in the catalogue, so its contacts are not known; found 'RAD1 P1-1'; give the item a part" },
        { "change.yaml", "from: CB2, to", "from: ¦CB2 P1-1, to", "'CB2' is a single point without connectors; found 'CB2 P1-1'; expected an end such as 'A1 P1-12' (item, connector half, contact) or 'CB12' (breaker, ground, splice or terminal); write 'CB2' alone" },

        // power and pins
        { "change.yaml", "input: main", "input: ¦mian", "'RECORDER' has no power input 'mian'; did you mean 'main'?" },
        { "change.yaml", "state: record }", "state: ¦recrod }", "power input 'main' of 'RECORDER' has no state 'recrod'; expected one of record, standby; did you mean 'record'?" },
        { "parts/equipment.yaml", "plus: [P1-1]", "plus: [¦P1-11]", "connector 'P1' of 'RECORDER' (CONN9) has no contact '11'; found 'P1-11'; did you mean '1'?" },
        { "parts/equipment.yaml", "minus: [P1-2]", "minus: [¦2]", "a pin is a connector and a contact; found '2'; expected for example 'P1-12'" },

        // circles
        { "change.yaml", "    skill: avionics\n", "    skill: avionics\n    ¦after: [K2]\n  K2: { name: Debrief, zone: COCKPIT, time: { low: 1 min, likely: 2 min, high: 3 min }, after: [K1] }\n", "these come before each other in a circle: K1 after K2 after K1" },
        { "aircraft.yaml", "    fasteners: 6\n", "    fasteners: 6\n    ¦after: [GLARE]\n", "these come before each other in a circle: GLARE after GLARE" },
        { "aircraft.yaml", "feeders:\n", "  AUX: { name: Second bus, nominal: 28 V }\nfeeders:\n  ¦F2: { from: AUX, to: MAIN, wire: W8, length: 1 m }\n  F3: { from: MAIN, to: AUX, wire: W8, length: 1 m }\n", "these buses feed each other in a circle: AUX to MAIN to AUX" },
        { "aircraft.yaml", "  S1: { from: N1, to: N2", "  S1: { from: N1, to: ¦N1", "the way 'S1' ends where it begins; found 'N1'; expected another raceway point" },

        // spans
        { "change.yaml", "likely: 15 min", "likely: ¦9 min", "'likely' is less than 'low'" },
        { "aircraft.yaml", "open:  { low: 10 min, likely: 15 min, high: 30 min }", "open:  { low: 10 min, likely: 15 min, high: ¦30 s }", "'high' is less than 'likely'" },
        { "aircraft.yaml", "min: 170 lb, max: 440 lb", "min: 170 lb, max: ¦77 kg", "'max' is less than 'min'" },
        { "parts/equipment.yaml", "max-voltage: 32 V", "max-voltage: ¦19.9 V", "'max-voltage' is less than 'min-voltage'" },
        { "parts/wiring.yaml", "thinnest: 24, thickest: 20,", "thinnest: 20, thickest: ¦24,", "'thickest' is less than 'thinnest'" },
        { "aircraft.yaml", "  max-landing: 3300 lb\n", "  max-landing: ¦3400 lb\n", "'max-take-off' is less than 'max-landing'" },
        { "aircraft.yaml", "  max-landing: 3300 lb\n", "  max-landing: 3300 lb\n  max-zero-fuel: ¦3301 lb\n", "'max-take-off' is less than 'max-zero-fuel'" },

        { "change.yaml", "{ from: CB2, to: REC1 P1-1,", "{ from: CB2, to: ¦CB2,", "the circuit 'C1' ends where it begins; found 'CB2'; expected the other end of the circuit" },

        // said twice
        { "change.yaml", "R1: { item: CLK1, panels: [GLARE] }", "R1: { item: CLK1, panels: [GLARE] }\n  R2: { item: ¦CLK1, panels: [GLARE] }", "the item 'CLK1' comes out twice; first at change.yaml:16:15; name the item that was meant, or remove this entry" },
        { "aircraft.yaml", "{ condition: on-battery, current: 3 A }", "{ condition: ¦cruise, current: 3 A }", "the condition 'cruise' stands twice in load 'NAV'; first at aircraft.yaml:93:22; keep the one that applies, and name the other condition if another was meant" },
        { "change.yaml", "{ condition: on-battery, state: standby }", "{ condition: ¦cruise, state: standby }", "the condition 'cruise' stands twice in feed 'REC'; first at change.yaml:43:22; keep the one that applies, and name the other condition if another was meant" },

        // files as text
        { "change.yaml", "  CB2: { name", "¦\tCB2: { name", "the line is indented with a tab; expected spaces; put spaces in place of the tab" },
        { "change.yaml", "title: Cabin data recorder in place of the clock", "title: ¦\"Cabin data recorder in place of the clock", "the file cannot be read as YAML: a quotation mark is not closed; put the closing quotation mark" },
        { "change.yaml", "R1: { item: CLK1, panels: [GLARE] }", "R1: ¦{ item: CLK1, panels: [GLARE]", "a bracket is opened here and not closed" },
        { "change.yaml", "R1: { item: CLK1, panels: [GLARE] }", "R1: { item: CLK1, panels: [GLARE ¦}", "the file cannot be read as YAML: While parsing a flow sequence, did not find expected ',' or ']'" },
        { "change.yaml", "R1: { item: CLK1, panels: [GLARE] }", "R1: { item: CLK1, panels: [GLARE] ¦]", "the file cannot be read as YAML: While parsing a flow mapping, did not find expected ',' or '}'" },
        { "change.yaml", "title: Cabin data", "title: Cabin¦: data", "the file cannot be read as YAML: a ':' stands within a value, or the line before lacks its ':'; put the value in quotation marks, or end the key before it with ':'" },
        { "change.yaml", "title: Cabin data recorder in place of the clock", "¦title: \"\\UFFFFFFFF\"", "the file cannot be read as YAML after this" },
        { "change.yaml", "wiring:\n", "wiring: ¦&w\n", "anchors are not used in job files; found &w; write the value out where it is needed" },
        { "aircraft.yaml", "compass: { fs: 55 in, bl: 0 in, wl: 52 in }", "compass: ¦*place", "aliases are not used in job files; found *place; write the value out" },
        { "aircraft.yaml", "ceiling: 18000 ft", "ceiling: ¦!!str 18000 ft", "tags are not used in job files; found tag:yaml.org,2002:str; leave the tag out" },
        { "change.yaml", "R1: { item: CLK1, panels: [GLARE] }", "R1: { item: CLK1, panels: [¦GLARE: a] }", "'panels' is a single value; found keys with values; expected a word or words" },
        { "job.yaml", "number: WO-0001", "number: WO-0001\n? ¦[a, b]\n: c", "a key is a word; found a list" },
        { "job.yaml", "aircraft: aircraft.yaml", "aircraft: ¦aircraft.yml", "the job names the file 'aircraft.yml' and there is none; did you mean 'aircraft.yaml'?" },
        { "job.yaml", "parts: parts/*.yaml", "parts: ¦part/*.yaml", "no file of the job is named 'part/*.yaml', so it has no parts catalogue" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void A_fault_is_told_once_where_it_stands_and_in_full(string file, string good, string bad, string message)
    {
        var text = Jobs.Replaced(Jobs.Text(file), good, bad);
        var at = text.IndexOf(Here, StringComparison.Ordinal);
        // A message that begins with a place of its own stands elsewhere than the edit.
        var place = at < 0 || message.StartsWith("parts/", StringComparison.Ordinal) ? "" : $"{file}:{text[..at].Count(c => c == '\n') + 1}:{at - text.LastIndexOf('\n', at)}: ";
        var result = Jobs.With(file, text.Replace(Here.ToString(), "", StringComparison.Ordinal));
        Assert.Equal([place + message], Jobs.Lines(result));
        Assert.Null(result.Job);
    }

    [Fact]
    public void A_name_that_would_steer_a_terminal_is_proposed_without_its_signs()
    {
        var files = Jobs.Starting();
        files["parts/equipment.yaml"] = System.Text.Encoding.UTF8.GetBytes(Jobs.Replaced(Jobs.Text("parts/equipment.yaml"), "  RECORDER:", "  \"RECORD\\u202eER\":"));
        Assert.Contains(Jobs.Lines(Jobs.Load(files)), line => line.Contains("did you mean", StringComparison.Ordinal));
        Assert.All(Jobs.Lines(Jobs.Load(files)), line => Assert.DoesNotContain('\u202e', line));
    }

    [Fact]
    public void An_antenna_has_no_isolation_from_itself()
    {
        var files = Directory.GetFiles(Demo.Folder, "*", SearchOption.AllDirectories).ToDictionary(f => Path.GetRelativePath(Demo.Folder, f).Replace('\\', '/'), File.ReadAllBytes);
        files["change.yaml"] = System.Text.Encoding.UTF8.GetBytes(Jobs.Replaced(System.Text.Encoding.UTF8.GetString(files["change.yaml"]), "one: E1, other: E5", "one: E1, other: E1"));
        Assert.Contains("the isolation 'M1' is that of one antenna from itself; found 'E1'; expected another antenna", Jobs.Lines(Jobs.Load(files)).Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_missing_is_told_where_the_job_names_it()
    {
        var files = Jobs.Starting();
        files.Remove("change.yaml");
        Assert.Equal(["job.yaml:28:11: the job names the file 'change.yaml' and there is none"], Jobs.Lines(Jobs.Load(files)));
    }

    [Fact]
    public void A_job_without_parts_says_so()
    {
        var files = Jobs.Starting().Where(f => !f.Key.StartsWith("parts/", StringComparison.Ordinal));
        Assert.Equal(["job.yaml:29:10: no file of the job is named 'parts/*.yaml', so it has no parts catalogue"], Jobs.Lines(Jobs.Load(files)));
    }

    [Fact]
    public void A_folder_without_a_job_says_so() => Assert.Equal(["job.yaml:1:1: the job has no file 'job.yaml'"], Jobs.Lines(Jobs.Load([])));

    [Theory]
    [InlineData("")]
    [InlineData("# nothing yet\n")]
    public void An_empty_file_says_so(string contents) => Assert.Equal(["change.yaml:1:1: the file is empty"], Jobs.Lines(Jobs.With("change.yaml", contents)));

    [Fact]
    public void Ten_faults_in_three_files_are_ten_problems()
    {
        var files = Jobs.Starting();
        void Edit(string file, string good, string bad) => files[file] = System.Text.Encoding.UTF8.GetBytes(Jobs.Replaced(System.Text.Encoding.UTF8.GetString(files[file]), good, bad));
        Edit("aircraft.yaml", "ceiling: 18000 ft", "ceiling: 18000");
        Edit("aircraft.yaml", "kind: cover", "kind: lid");
        Edit("aircraft.yaml", "  mass: 2100 lb\n", "");
        Edit("aircraft.yaml", "registration: X9-001", "registraton: X9-001");
        Edit("change.yaml", "to: REC1 P1-1,", "to: REC1 P9-1,");
        Edit("change.yaml", "zone: TAIL", "zone: TIAL");
        Edit("change.yaml", "state: standby", "state: asleep");
        Edit("change.yaml", "shed-at: 10 min", "shed-at: 10 A");
        Edit("parts/wiring.yaml", "rating: 3 A,", "rating: -3 A,");
        Edit("parts/wiring.yaml", "  W22: {", "  W20: {");
        var result = Jobs.Load(files);
        Assert.Equal(
            ["unknown-key", "bad-value", "bad-value", "missing-key", "unknown-id", "unknown-connector", "unknown-state", "bad-value", "duplicate-id", "out-of-range"],
            result.Problems.Select(p => p.Code));
    }
}
