using CsCheck;
using Fairlead.Calculations;
using Fairlead.Model.Storage;
using Fairlead.Substantiation;
using Fairlead.Substantiation.Tests;

namespace Fairlead.Tests.Substantiation;

/// <summary>Every single fault is put into the wiring, one after the other, and must be found by readings alone.</summary>
public sealed class DiagnosisTests(ITestOutputHelper output)
{
    private static readonly TestPlan Twin = TestPlan.Of(new Assessor().Assess(JobFolder.Load(Path.Combine(AppContext.BaseDirectory, "demo", "survey-twin")).Job!));

    [Fact]
    public void Every_single_fault_of_the_demonstration_is_named_with_fewer_readings_than_a_straight_sweep()
    {
        var (guided, straight, enough, faults) = (0.0, 0.0, 0.0, 0);
        foreach (var harness in Twin.Harnesses.Where(h => h.Contacts.Count >= 9))
        {
            var diagnosis = new Diagnosis(harness);
            var (mean, sweep, named, count) = (0.0, 0.0, 0.0, 0);
            foreach (var fault in diagnosis.Classes)
            {
                var weight = fault.Faults.Length;
                mean += weight * Guided(diagnosis, fault);
                var (readings, known) = Swept(diagnosis, fault);
                sweep += weight * readings;
                named += known ? weight : 0;
                count += weight;
            }

            output.WriteLine($"{harness.Connector}: {harness.Contacts.Count} contacts, {count} faults in {diagnosis.Classes.Length} classes; guided {mean / count:0.0}, sweep {sweep / count:0.0} of {diagnosis.Sweep.Length} and then named {named / count:P0}");
            Assert.True(mean < 0.75 * sweep, harness.Connector);
            (guided, straight, enough, faults) = (guided + mean, straight + sweep, enough + named, faults + count);
        }

        output.WriteLine($"all: {faults} faults, guided {guided / faults:0.0}, sweep {straight / faults:0.0}, named by the sweep alone {enough / faults:P0}");
        Assert.True(guided < 0.5 * straight);
    }

    [Fact]
    public void A_fault_that_no_reading_shows_is_in_the_class_of_sound_wiring_and_changes_no_net()
    {
        foreach (var harness in Twin.Harnesses)
        {
            var diagnosis = new Diagnosis(harness);
            Assert.True(diagnosis.Classes[0].IsSound);
            Assert.All(diagnosis.Classes[0].Faults.Skip(1), f => Assert.True(SameNet(diagnosis, harness, f), f.Text));
        }
    }

    [Fact]
    public void Every_single_fault_of_a_generated_connector_is_found() =>
        Harnesses.Sample(harness =>
        {
            var diagnosis = new Diagnosis(harness);
            var whole = diagnosis.Sweep.Length + (2 * harness.Contacts.Count) + 8;
            Assert.All(diagnosis.Classes, fault => Assert.InRange(Guided(diagnosis, fault), 0, whole));
        }, iter: 40);

    [Fact]
    public void Faults_that_agree_never_exclude_the_fault_that_is_there() =>
        Gen.Select(Harnesses, Gen.Int[0, int.MaxValue], Gen.Int[0, 1000].List[1, 12]).Sample((harness, which, picks) =>
        {
            var diagnosis = new Diagnosis(harness);
            var fault = diagnosis.Classes[which % diagnosis.Classes.Length];
            var readings = picks.Select(p => diagnosis.Sweep[p % diagnosis.Sweep.Length]).Select(m => new Reading(m, diagnosis.Closes(m, fault)));
            Assert.Contains(fault, diagnosis.Consistent(readings));
        }, iter: 200);

    [Fact]
    public void The_next_reading_is_the_same_every_time()
    {
        var harness = Twin.Harnesses[0];
        var (one, other) = (new Diagnosis(harness), new Diagnosis(harness));
        Assert.Equal(one.Next(one.Classes)!.Value.Measurement, other.Next(other.Classes)!.Value.Measurement);
    }

    [Fact]
    public void A_measurement_reads_back_from_its_id()
    {
        var measurement = new Measurement(["A1 P1-1", "A1 P1-2"], ["airframe"], ShieldsLifted: true);
        Assert.Equal(measurement, Measurement.Read(measurement.Id));
        Assert.Null(Measurement.Read("bond"));
        Assert.Null(Measurement.Read("A1 P1-1>"));
    }

    // Wires to a far plug, to ground and to a splice, pairs in shields: contacts in one row.
    private static readonly Gen<HarnessUnderTest> Harnesses = Gen.Int[0, 4].Array[2, 12].Select(kinds =>
    {
        string Here(int i) => $"A1 P1-{i + 1}";
        HarnessWire Wire(int i) => kinds[i] switch
        {
            0 => new($"C{i}", Here(i), HarnessUnderTest.Airframe),
            1 => new($"C{i}", Here(i), $"B1 P2-{i + 1}", "shield K1"),
            2 => new($"C{i}", "SP1", Here(i)),
            3 => new($"C{i}", Here(i), $"B2 P3-{i + 1}", "shield K2", "T"),
            _ => new($"C{i}", $"B1 P2-{i + 1}", Here(i)),
        };
        var n = kinds.Length;
        return new HarnessUnderTest(
            "A1 P1", Enumerable.Range(0, n).Select(Here).ToSequence(), Enumerable.Range(0, n).Select(Wire).ToSequence(), Enumerable.Range(0, n - 1).Select(i => new Neighbours(Here(i), Here(i + 1))).ToSequence(),
            kinds.Contains(1) ? ["shield K1"] : [], ["SP1"]);
    });

    private static int Guided(Diagnosis diagnosis, FaultClass fault)
    {
        var readings = new List<Reading>();
        var left = diagnosis.Classes;
        while (left.Length > 1)
        {
            var next = diagnosis.Next(left) ?? throw new InvalidOperationException($"{fault.Text}: {left.Length} classes are left and no reading tells them apart: {string.Join(" | ", left.Take(3).Select(l => l.Text))}");
            Assert.True(next.Bits > 0);
            readings.Add(new Reading(next.Measurement, diagnosis.Closes(next.Measurement, fault)));
            left = diagnosis.Consistent(readings);
        }

        Assert.Same(fault, Assert.Single(left));
        return readings.Count;
    }

    // The sweep stops as soon as its readings leave one class, or at its end.
    private static (int Readings, bool Named) Swept(Diagnosis diagnosis, FaultClass fault)
    {
        var (left, readings) = (diagnosis.Classes, 0);
        foreach (var measurement in diagnosis.Sweep.TakeWhile(_ => left.Length > 1))
        {
            var closed = diagnosis.Closes(measurement, fault);
            left = [.. left.Where(c => diagnosis.Closes(measurement, c) == closed)];
            readings++;
        }

        return (readings, left.Length == 1);
    }

    private static bool SameNet(Diagnosis diagnosis, HarnessUnderTest harness, SingleFault fault)
    {
        var wire = harness.Wires.FirstOrDefault(w => w.Id == fault.A);
        var (a, b) = fault.Kind switch
        {
            FaultKind.ShortToGround => (fault.A, HarnessUnderTest.Airframe),
            FaultKind.ShieldToSignal => (wire!.From, fault.B),
            FaultKind.Open or FaultKind.MissingGround => (wire!.From, wire.To),
            _ => (fault.A, fault.B),
        };
        return harness.Hidden.Contains(a) || harness.Hidden.Contains(b) || diagnosis.Closes(Measurement.Between(a, b), diagnosis.Classes[0]);
    }
}
