using InfusionSim.Physics.Flow;

namespace InfusionSim.Verification.Tests.EventByEvent;

/// <summary>Clock of the total fill from one linear solve, or two where a vent drinks or feeds differ.</summary>
/// <remarks>
/// Derived from the accumulated pressure w: when the last place fills, w solves A w = θ g − C everywhere and vanishes
/// there. With A u = C and A P = g it is w = θ P − u, so θ = max u/P. Background: Elliott and Janovský, Proc. R. Soc.
/// Edinburgh A 88 (1981) 93–107, from memory.
/// </remarks>
public sealed class TotalFill
{
    private TotalFill(double clock, int lastCell)
    {
        Clock = clock;
        LastCell = lastCell;
    }

    /// <summary>Clock at which the last cell is full [-].</summary>
    public double Clock { get; }

    /// <summary>Cell that fills last.</summary>
    public int LastCell { get; }

    /// <summary>Solves a panel by direct elimination.</summary>
    /// <param name="problem">Conductances, pore volumes and lines.</param>
    public static TotalFill Of(FillProblem problem)
    {
        var network = new WetNetwork(problem);
        int count = problem.Operator.CellCount;
        bool[] cloth = [.. problem.PoreVolume.Select(volume => volume > 0)];
        double[] u = new double[count], steady = new double[count];
        network.Solve(cloth, problem.PoreVolume, u);
        network.Solve(cloth, WetNetwork.FeedInflowOf(problem), steady);
        double clock = 0;
        int last = -1;
        for (int cell = 0; cell < count; cell++)
        {
            if (!cloth[cell] || u[cell] / steady[cell] <= clock) continue;
            clock = u[cell] / steady[cell];
            last = cell;
        }

        return new TotalFill(clock, last);
    }
}
