namespace InfusionSim.Numerics.Complementarity;

/// <summary>What one pass over the nodes found.</summary>
internal struct WetBalance
{
    /// <summary>Sum of the absolute imbalance of the wet nodes.</summary>
    public double Imbalance;

    /// <summary>What the wet nodes hold in all.</summary>
    public double Held;

    /// <summary>How many nodes changed places.</summary>
    public int Changed;
}
