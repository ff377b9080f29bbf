using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Substantiation.Power;

/// <summary>A condition with the sources that supply it: as stated, or with one of them lost.</summary>
/// <param name="Condition">The condition; its sources are those that are left.</param>
/// <param name="Key">What sheets and findings call it.</param>
internal sealed record Supplied(OperatingCondition Condition, string Key)
{
    /// <summary>Every condition as stated, and the loss of any one source that no condition states. What is switched off then is what an
    /// abnormal condition with as many sources says; where there is none, nothing is.</summary>
    public static IEnumerable<Supplied> Of(Aircraft aircraft)
    {
        var conditions = aircraft.Conditions.OrEmpty();
        foreach (var condition in conditions)
        {
            yield return new(condition, condition.Id);
        }

        foreach (var left in conditions.Where(c => c.Kind == ConditionKind.Normal && c.Sources.Count > 1).SelectMany(c => c.Sources.Select(lost => c.Sources.Where(s => s != lost).ToSequence())).Distinct())
        {
            var abnormal = conditions.Where(c => c.Kind == ConditionKind.Abnormal && c.Sources.Count == left.Count).ToArray();
            if (abnormal.Any(c => c.Sources.All(left.Contains)))
            {
                continue;
            }

            var shed = abnormal.Length > 0 ? abnormal : conditions.Where(c => c.Kind == ConditionKind.Normal && c.Sources.Count == left.Count + 1 && left.All(c.Sources.Contains));
            foreach (var condition in shed)
            {
                var on = string.Join(" and ", left.Select(id => aircraft.Sources?.Find(id)?.Name ?? id));
                yield return new(condition with { Sources = left, Name = $"{condition.Name}, with {on} alone" }, $"{condition.Id}-on-{string.Join('+', left)}");
            }
        }
    }
}
