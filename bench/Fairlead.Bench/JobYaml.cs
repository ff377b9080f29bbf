using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using Fairlead.Calculations;
using Fairlead.Model;
using Fairlead.Model.Storage;

namespace Fairlead.Bench;

/// <summary>Writes a job as the files it could be read from: entries one a line, as people write long catalogues.</summary>
public static class JobYaml
{
    /// <summary>The files of a job.</summary>
    public static MemoryFiles Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new MemoryFiles(
        [
            File("job.yaml", job.Order), File("aircraft.yaml", job.Aircraft), File("change.yaml", job.Change), File("parts/parts.yaml", job.Parts),
        ]);
    }

    private static KeyValuePair<string, byte[]> File(string name, object record)
    {
        var text = new StringBuilder();
        foreach (var (key, value) in Fields(record))
        {
            if (value is IEnumerable<IEntity> catalog)
            {
                text.Append(key).Append(":\n");
                foreach (var entity in catalog)
                {
                    text.Append("  ").Append(entity.Id).Append(": ").Append(Value(entity)).Append('\n');
                }
            }
            else
            {
                text.Append(key).Append(": ").Append(Value(value)).Append('\n');
            }

            text.Append('\n');
        }

        return KeyValuePair.Create(name, Encoding.UTF8.GetBytes(text.ToString()));
    }

    // What a record says beyond its defaults.
    private static IEnumerable<(string Key, object Value)> Fields(object record)
    {
        foreach (var p in record.GetType().GetConstructors().MaxBy(c => c.GetParameters().Length)!.GetParameters().Where(p => p.GetCustomAttribute<KeyAttribute>() is null))
        {
            var value = record.GetType().GetProperty(p.Name!)!.GetValue(record);
            var usual = p.HasDefaultValue ? p.DefaultValue ?? (p.ParameterType.IsValueType ? Activator.CreateInstance(p.ParameterType) : null) : null;
            usual = p.ParameterType.IsEnum && usual is not null ? Enum.ToObject(p.ParameterType, usual) : usual;
            if (value is not null && !(p.HasDefaultValue && (value.Equals(usual) || value is ICollection { Count: 0 } or IEnumerable<IEntity> and IReadOnlyCollection<IEntity> { Count: 0 })))
            {
                yield return (Words.Kebab(p.Name!), value);
            }
        }
    }

    private static string Value(object value) => value switch
    {
        string text => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"",
        bool yes => yes ? "yes" : "no",
        Enum word => Words.Kebab(word.ToString()),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        TimeOnly time => time.ToString("HH:mm", CultureInfo.InvariantCulture),
        IQuantity quantity => Quantity(quantity),
        Gauge or Endpoint => value.ToString()!,
        IConvertible number => number.ToString(CultureInfo.InvariantCulture),
        IEnumerable<IEntity> catalog => "{ " + string.Join(", ", catalog.Select(e => $"{e.Id}: {Value(e)}")) + " }",
        IEnumerable list => "[" + string.Join(", ", list.Cast<object>().Select(Value)) + "]",
        _ => "{ " + string.Join(", ", Fields(value).Select(f => $"{f.Key}: {Value(f.Value)}")) + " }",
    };

    private static string Quantity(IQuantity quantity)
    {
        var measure = (Measure)quantity.GetType().GetProperty("Measure")!.GetValue(quantity)!;
        return string.Create(CultureInfo.InvariantCulture, $"{measure.Value:R} {measure.Unit.Symbol}");
    }
}
