namespace Fairlead.Client.Desk;

/// <summary>Whether the server answers, and how old what is shown is when it does not.</summary>
/// <param name="clock">The clock of the tablet.</param>
public sealed class Link(TimeProvider clock)
{
    /// <summary>Whether the server did not answer when it was asked last.</summary>
    public bool Away { get; private set; }

    /// <summary>Since when the oldest of what is shown was kept; null when all is of now.</summary>
    public DateTimeOffset? AsOf { get; private set; }

    /// <summary>How much the server's clock is ahead of the tablet's, as measured last; null when it never was.</summary>
    public TimeSpan? Ahead { get; private set; }

    /// <summary>Raised when anything of this has changed.</summary>
    public event Action? Changed;

    /// <summary>The server answered, at this time by its own clock.</summary>
    public void Answered(DateTimeOffset? server)
    {
        Ahead = server is { } time ? time - clock.GetUtcNow() : Ahead;
        if (Away)
        {
            (Away, AsOf) = (false, null);
            Changed?.Invoke();
        }
    }

    /// <summary>The server did not answer.</summary>
    public void Missed()
    {
        if (!Away)
        {
            Away = true;
            Changed?.Invoke();
        }
    }

    /// <summary>An answer kept then is shown instead.</summary>
    public void Shown(DateTimeOffset kept)
    {
        if (AsOf is null || kept < AsOf)
        {
            AsOf = kept;
            Changed?.Invoke();
        }
    }
}
