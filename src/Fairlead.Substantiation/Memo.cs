using System.Collections.Immutable;
using Fairlead.Calculations;

namespace Fairlead.Substantiation;

/// <summary>Outcomes by calculation and input. Inputs have value equality, so equal inputs are worked once, whoever asks.</summary>
/// <param name="known">Outcomes that others know, and to which nothing is added any more.</param>
internal sealed class Memo(Memo? known = null)
{
    private readonly Dictionary<Type, object> shelves = [];

    /// <summary>Calculations run so far.</summary>
    public long Runs { get; private set; }

    /// <summary>How many outcomes a calculation may keep before its oldest half is dropped.</summary>
    public int Capacity { get; set; } = 4096;

    /// <summary>The outcome of a calculation for an input.</summary>
    /// <param name="input">The input.</param>
    /// <param name="keep">Symbols whose values are kept; always the same for one calculation.</param>
    public Outcome Run<TCalculation, TInput>(TInput input, params ReadOnlySpan<string> keep)
        where TCalculation : ICalculation<TInput>
        where TInput : notnull
    {
        var shelf = ShelfOf<TCalculation, TInput, Outcome>();
        if (shelf.Find(input) is { } found)
        {
            return found;
        }

        Runs++;
        var sheet = TCalculation.Run(input);
        var values = ImmutableArray.CreateBuilder<double?>(keep.Length);
        foreach (var symbol in keep)
        {
            values.Add(sheet.Find(symbol)?.Si);
        }

        return shelf.Put(input, new Outcome<TCalculation, TInput>(input, sheet, values.MoveToImmutable()), Capacity);
    }

    /// <summary>A value that a calculation gives without its sheet.</summary>
    public TResult Get<TCalculation, TInput, TResult>(TInput input, Func<TInput, TResult> run)
        where TInput : notnull
        where TResult : class
    {
        var shelf = ShelfOf<TCalculation, TInput, TResult>();
        if (shelf.Find(input) is { } found)
        {
            return found;
        }

        Runs++;
        return shelf.Put(input, run(input), Capacity);
    }

    private Shelf<TInput, TResult> ShelfOf<TCalculation, TInput, TResult>()
        where TInput : notnull
        where TResult : class
    {
        var key = typeof((TCalculation, TInput, TResult));
        if (!shelves.TryGetValue(key, out var shelf))
        {
            shelves.Add(key, shelf = new Shelf<TInput, TResult>(known?.Known<TInput, TResult>(key)));
        }

        return (Shelf<TInput, TResult>)shelf;
    }

    private Shelf<TInput, TResult>? Known<TInput, TResult>(Type key)
        where TInput : notnull
        where TResult : class => (Shelf<TInput, TResult>?)shelves.GetValueOrDefault(key) ?? known?.Known<TInput, TResult>(key);

    // Two generations: what was not asked for while a whole generation filled up is dropped.
    private sealed class Shelf<TInput, TResult>(Shelf<TInput, TResult>? below)
        where TInput : notnull
        where TResult : class
    {
        private Dictionary<TInput, TResult> young = [];
        private Dictionary<TInput, TResult> old = [];

        public TResult? Find(TInput input)
        {
            if (young.TryGetValue(input, out var found))
            {
                return found;
            }

            if (old.Remove(input, out found))
            {
                young.Add(input, found);
            }

            return found ?? below?.Look(input);
        }

        // Several threads may look at once, so nothing is moved.
        private TResult? Look(TInput input) => young.TryGetValue(input, out var found) || old.TryGetValue(input, out found) ? found : below?.Look(input);

        public TResult Put(TInput input, TResult result, int capacity)
        {
            if (young.Count >= capacity)
            {
                (old, young) = (young, []);
            }

            young.Add(input, result);
            return result;
        }
    }
}
