namespace InfusionSim.Physics.Flow;

/// <summary>A stretch of a fill during which no clamp is turned.</summary>
/// <param name="Problem">The panel as numbers, with the clamps as they stand.</param>
/// <param name="Reached">Nodes that an open feed can reach. [nodes].</param>
/// <param name="Start">The panel as the stretch begins.</param>
/// <param name="End">Drive clock at which it ends [-].</param>
internal sealed record FillStretch(FillProblem Problem, bool[] Reached, FillStart Start, double End)
{
    private FillMarcher? _marcher;

    /// <summary>Computes the states of the stretch.</summary>
    public FillMarcher Marcher
    {
        get => _marcher ??= new FillMarcher(Problem, Reached, Start);
        init => _marcher = value;
    }
}
