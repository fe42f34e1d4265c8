using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Physics.Tests.Flow;

/// <summary>Filled and steady panels by the textbook solver that the verification uses, for cells that a feed or open vent holds.</summary>
internal static class TestSolver
{
    /// <summary>Clock at which the last cell is full when no vent passes resin: the largest u of A u = C.</summary>
    public static double FillClock(FillProblem problem) => Solve(problem.Operator, problem.PoreVolume).Max();

    /// <summary>Pressure in each cell when all is wet.</summary>
    public static double[] SteadyPressure(FillProblem problem)
    {
        double[] right = new double[problem.Operator.NodeCount];
        foreach (var contact in problem.Feeds.SelectMany(feed => feed.Contacts)) right[contact.Cell] += contact.Conductance;
        return Solve(problem.Operator, right);
    }

    /// <summary>Flow through all feeds when all is wet, per driving pressure over viscosity [m³].</summary>
    public static double SteadyFlow(FillProblem problem)
    {
        double[] pressure = SteadyPressure(problem);
        return problem.Feeds.SelectMany(feed => feed.Contacts).Sum(contact => contact.Conductance * (1 - pressure[contact.Cell]));
    }

    public static double[] Solve(LatticeOperator a, double[] right) => PlainSolver.Solve(a, right, residual: 1e-14);
}
