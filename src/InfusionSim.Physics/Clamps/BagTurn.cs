namespace InfusionSim.Physics.Clamps;

/// <summary>A change of the vacuum that has been made, or is due.</summary>
/// <param name="Clock">Drive clock at which it is made [-].</param>
/// <param name="Pressure">Absolute pressure under the bag from then on [Pa].</param>
public sealed record BagTurn(double Clock, double Pressure)
{
    /// <summary>The moment that was waited for.</summary>
    public required Moment When { get; init; }
}
