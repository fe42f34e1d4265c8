namespace InfusionSim.Physics.Quality;

/// <summary>From where to where a number runs over the cloth.</summary>
/// <param name="From">Low end, in the unit of the number [m/s or -].</param>
/// <param name="To">High end, in the unit of the number [m/s or -].</param>
public sealed record QualityRange(double From, double To);
