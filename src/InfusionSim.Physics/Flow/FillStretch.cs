using InfusionSim.Physics.Air;
using InfusionSim.Physics.Gravity;

namespace InfusionSim.Physics.Flow;

/// <summary>A stretch of a fill during which no clamp is turned.</summary>
/// <param name="Problem">The panel as numbers, with the clamps as they stand.</param>
/// <param name="Reached">Nodes that an open feed, or trapped gas, can act on. [nodes].</param>
/// <param name="Start">The panel as the stretch begins.</param>
/// <param name="End">Drive clock at which it ends [-].</param>
internal sealed record FillStretch(FillProblem Problem, bool[] Reached, FillStart Start, double End)
{
    /// <summary>Gas in sealed pockets; null for none.</summary>
    public GasHold? Gas { get; init; }

    /// <summary>The pockets as it begins.</summary>
    public IReadOnlyList<GasPocket> Pockets { get; init; } = [];

    /// <summary>How the fill would end if nothing were turned from here on, as far as that was asked; null in a step of trapped gas.</summary>
    public FillTotal? Total { get; init; }

    /// <summary>What weight does in it; null where it does not count.</summary>
    public GravityFill? Gravity { get; init; }

    /// <summary>A marcher that stands ready; null to make one when it is needed.</summary>
    public FillMarcher? Marcher { get; init; }

    /// <summary>Makes a marcher.</summary>
    /// <param name="arrival">When the front passed each node [-]. [nodes].</param>
    /// <param name="before">A marcher that is done with, whose solver goes on where its network is the same; null for none.</param>
    public FillMarcher NewMarcher(double[] arrival, FillMarcher? before = null) =>
        Gravity?.NewMarcher() ?? new(Problem, Reached, null, Start, Gas, arrival, before);
}
