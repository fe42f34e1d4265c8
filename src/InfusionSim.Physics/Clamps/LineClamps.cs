using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Clamps;

/// <summary>How far open every clamp is at one moment.</summary>
/// <param name="Feeds">Of each feed in the panel's order [-], 0 shut to 1 open.</param>
/// <param name="Vents">Of each vent in the panel's order [-], 0 shut to 1 open.</param>
public sealed record LineClamps(IReadOnlyList<double> Feeds, IReadOnlyList<double> Vents)
{
    /// <summary>Whether all are open.</summary>
    public bool AreAllOpen => Feeds.All(static open => open == 1) && Vents.All(static open => open == 1);

    /// <summary>Whether every clamp stands as in another record.</summary>
    /// <param name="other">The other one.</param>
    public bool AreAs(LineClamps other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Feeds.SequenceEqual(other.Feeds) && Vents.SequenceEqual(other.Vents);
    }

    /// <summary>The clamps as the first feed opens.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    public static LineClamps AtStart(Panel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return new([.. panel.Feeds.Select(static feed => feed.Clamp.OpenAtStart)], [.. panel.Vents.Select(static vent => vent.Clamp.OpenAtStart)]);
    }

    /// <summary>The clamps after a turn of one of them.</summary>
    /// <param name="turn">The turn.</param>
    public LineClamps After(ClampTurn turn)
    {
        ArgumentNullException.ThrowIfNull(turn);
        double[] changed = [.. turn.IsVent ? Vents : Feeds];
        changed[turn.Line] = turn.OpenFraction;
        return turn.IsVent ? this with { Vents = changed } : this with { Feeds = changed };
    }
}
