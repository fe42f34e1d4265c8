using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Verification.Tests.Settings;

/// <summary>The chain under test, from a panel to its forecast, with the checks that hold for every fill.</summary>
public static class Chain
{
    /// <summary>Largest mass error a forecast may have [-].</summary>
    public const double MassTolerance = 1e-9;

    /// <summary>
    /// Largest sum of imbalances the linear solver may leave, over the pore volume [-]: well below that of a forecast, so that weakly joined cells of
    /// strongly directed cloth are exact too.
    /// </summary>
    public const double SolverTolerance = 1e-12;

    /// <summary>Cells and conductances of a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="origin">Lower left corner of the grid [m]; null for the outline's own.</param>
    public static FillProblem Problem(Panel panel, Point2? origin = null) => FillProblemBuilder.Build(panel, origin);

    /// <summary>Fill map of a problem.</summary>
    /// <param name="problem">The problem.</param>
    public static FillMap Map(FillProblem problem) => FillMap.Compute(problem);

    /// <summary>Time at which the last place of a problem is full under the reference drive [s], without following the fill.</summary>
    /// <param name="problem">The problem; all its cloth can be reached.</param>
    public static double FillTime(FillProblem problem) =>
        FillTotal.Of(problem, [.. problem.PoreVolume.Select(volume => volume > 0)], SolverTolerance).Clock / Reference.ClockRate;

    /// <summary>Pressure in each node of a problem when all is wet [-].</summary>
    /// <param name="problem">The problem; all its cloth can be reached.</param>
    public static double[] SteadyPressure(FillProblem problem) =>
        FillTotal.Of(problem, [.. problem.PoreVolume.Select(volume => volume > 0)], SolverTolerance).SteadyPressure;

    /// <summary>Flow through the first feed when all is wet, times viscosity over driving pressure [m³].</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="pressure">Its steady pressure [-].</param>
    public static double SteadyFlow(FillProblem problem, double[] pressure) =>
        problem.Feeds[0].Contacts.Sum(contact => contact.Conductance * (1 - pressure[contact.Cell]));

    /// <summary>State of a map at a clock; its mass error is judged.</summary>
    /// <param name="map">The map.</param>
    /// <param name="clock">Drive clock [-].</param>
    public static FillState State(FillMap map, double clock)
    {
        FillState state = map.StateAt(clock);
        Math.Abs(state.MassBalanceError).ShouldBeLessThanOrEqualTo(MassTolerance, $"mass error at clock {clock}");
        return state;
    }

    /// <summary>Forecast of a panel; its mass error is judged.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="resin">The resin; null for the reference.</param>
    /// <param name="bag">The bag; null for the reference.</param>
    public static Forecast Predict(Panel panel, Resin? resin = null, Bag? bag = null)
    {
        Forecast forecast = Forecaster.Predict(panel, resin ?? Reference.Resin, bag ?? Reference.Bag, new Goals(), permeabilityFactor: 1.5);
        Math.Abs(forecast.MassBalanceError).ShouldBeLessThanOrEqualTo(MassTolerance, "mass error of the forecast");
        return forecast;
    }

    /// <summary>A panel of the reference cloth.</summary>
    /// <param name="outline">Its outline.</param>
    /// <param name="cellSize">Side of a square [m].</param>
    /// <param name="feed">Where the feed lies.</param>
    /// <param name="vent">Where a membrane vent lies.</param>
    public static Panel ReferencePanel(Ring outline, double cellSize, LinePath feed, LinePath vent) => new(
        new Region(outline, []), [Reference.Skin], [new Feed("F1", feed, 0.012)], [new Vent("V1", vent, 0.012, VentKind.Membrane)], [], cellSize);

    /// <summary>Cells and cell size in words.</summary>
    /// <param name="problem">The problem.</param>
    public static string GridOf(FillProblem problem) =>
        $"{problem.Cells.Grid.Columns} × {problem.Cells.Grid.Rows} cells of {problem.Cells.Grid.CellSize * 1e3:G4} mm";
}
