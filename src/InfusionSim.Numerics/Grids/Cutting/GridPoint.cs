namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>A place measured in squares from the grid's origin: grid lines are the whole numbers.</summary>
/// <param name="U">Squares to the right of the origin [-].</param>
/// <param name="V">Squares above the origin [-].</param>
internal readonly record struct GridPoint(double U, double V);
