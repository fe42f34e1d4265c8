namespace InfusionSim.Physics.Flow;

/// <summary>Where the resin goes, on the drive clock: no minute and no resin in it.</summary>
public sealed class FillMap
{
    /// <summary>The problem it answers.</summary>
    public required FillProblem Problem { get; init; }

    /// <summary>Drive clock at which the front passes the middle of each cell [-]; +∞ where it never does, NaN without cloth. [rows × columns], x fastest.</summary>
    public required double[] Arrival { get; init; }

    /// <summary>Drive clock at which the last place that can fill is full [-], gas in sealed places left out of account.</summary>
    public required double FillClock { get; init; }

    /// <summary>Cell that fills last [-]; −1 when none can.</summary>
    public required int LastCell { get; init; }

    /// <summary>Computes the panel at one value of the drive clock.</summary>
    /// <param name="clock">Drive clock [-], at least 0.</param>
    /// <param name="withPressure">Whether to compute the pressure too.</param>
    /// <param name="cancellation">Stops the computation.</param>
    public FillState StateAt(double clock, bool withPressure = false, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
