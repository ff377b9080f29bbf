using Fairlead.Calculations;
using Fairlead.Model;

namespace Fairlead.Planning.Plans;

/// <summary>Whether the people of a job can man a task, each doing one part of it.</summary>
internal static class Manning
{
    /// <summary>What a person can do: the skills named, what may be certified, a second signature where there is anything, and being that person.</summary>
    public static Sequence<string> Skills(Person person) => person.Skills.Concat(person.Authorisations.Select(a => a.Scope))
        .Concat(person.Authorisations.Count > 0 ? [Tasks.Skills.Second] : []).Append(Self(person.Id)).Distinct(StringComparer.Ordinal).ToSequence();

    /// <summary>The skill of being one person: who began a task goes on with it.</summary>
    public static string Self(string person) => "person " + person;

    /// <summary>A skill as somebody has it who is not the only one to inspect: whoever inspects alone leaves the work that is looked at to others, where there are any.</summary>
    public static string Apart(string skill) => skill + " (not the inspector)";

    /// <summary>A skill as somebody brings it who is called in for what nobody of the job can do, and for nothing else.</summary>
    public static string Called(string skill) => "called in for " + skill;

    /// <summary>What is left of a crew without some parts of it.</summary>
    public static Sequence<string> Without(Sequence<string> crew, Sequence<string> filled)
    {
        List<string> missing = [.. crew];
        foreach (var skill in filled)
        {
            missing.Remove(skill);
        }

        return missing.ToSequence();
    }

    /// <summary>The parts of a crew that can be filled, each by another person, as many as can.</summary>
    public static Sequence<string> Filled(Sequence<string> crew, IReadOnlyList<Sequence<string>> people)
    {
        var taken = new int?[people.Count];
        bool Fill(int need, bool[] seen)
        {
            for (var p = 0; p < people.Count; p++)
            {
                if (!seen[p] && people[p].Contains(crew[need]))
                {
                    seen[p] = true;
                    if (taken[p] is not { } other || Fill(other, seen))
                    {
                        taken[p] = need;
                        return true;
                    }
                }
            }

            return false;
        }

        return Enumerable.Range(0, crew.Count).Where(need => Fill(need, new bool[people.Count])).Select(need => crew[need]).ToSequence();
    }
}
