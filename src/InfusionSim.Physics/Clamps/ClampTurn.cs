namespace InfusionSim.Physics.Clamps;

/// <summary>A turn of a clamp that has been made, or is due.</summary>
/// <param name="Clock">Drive clock at which it is made [-].</param>
/// <param name="IsVent">Whether the clamp is that of a vent.</param>
/// <param name="Line">Index of the feed or vent in the panel's order.</param>
/// <param name="OpenFraction">How far open it is from then on [-], 0 shut to 1 open.</param>
public sealed record ClampTurn(double Clock, bool IsVent, int Line, double OpenFraction)
{
    /// <summary>The moment that was waited for.</summary>
    public required Moment When { get; init; }
}
