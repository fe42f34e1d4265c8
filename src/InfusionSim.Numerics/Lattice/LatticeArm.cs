namespace InfusionSim.Numerics.Lattice;

/// <summary>One of the directions in which every cell of a lattice conducts to another cell.</summary>
/// <param name="Right">Columns to the right that the other cell lies [-].</param>
/// <param name="Up">Rows above that it lies [-]; above 0, or 0 with <paramref name="Right"/> above 0.</param>
/// <param name="Weight">Conductance of the way there [unit of the tensor], at least 0.</param>
public readonly record struct LatticeArm(int Right, int Up, double Weight)
{
    /// <summary>Square of the way's length, in cells [-].</summary>
    public int SquaredLength => Right * Right + Up * Up;
}
