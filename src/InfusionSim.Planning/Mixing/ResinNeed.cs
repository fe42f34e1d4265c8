using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Planning.Mixing;

/// <summary>Where the resin of one panel stays, with every place full.</summary>
/// <param name="InPart">Mass in cloth, core and gaps [kg].</param>
/// <param name="InMesh">Mass in flow mesh and peel ply [kg].</param>
/// <param name="InLines">Mass in feed lines and their hoses, those that were primed among them [kg].</param>
/// <param name="OutOfVents">Mass that leaves the cloth through the vents, into their hoses and catch pots [kg].</param>
public sealed record ResinNeed(double InPart, double InMesh, double InLines, double OutOfVents)
{
    /// <summary>Mass that all feeds draw [kg].</summary>
    public double Drawn => InPart + InMesh + InLines + OutOfVents;

    /// <summary>The need of a panel. A forecast that stops before the end does not make it smaller: nobody mixes for half a panel.</summary>
    /// <param name="forecast">Its forecast.</param>
    /// <param name="density">Density of the mixed resin [kg/m³], above 0.</param>
    /// <param name="ventsOpenAfter">How long open vents go on drawing after the panel is full [s], at least 0.</param>
    public static ResinNeed Of(Forecast forecast, double density, double ventsOpenAfter)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentOutOfRangeException.ThrowIfNegative(ventsOpenAfter);
        FillProblem problem = forecast.Map.Problem;
        (double part, double mesh) = Room(problem);
        double drawnOff = forecast.Vents.Sum(static vent => vent.ResinOut), after = forecast.Vents.Sum(static vent => vent.ResinOutRate) * ventsOpenAfter;
        double lines = forecast.FeedLineVolumes.Sum() + PrimedVolume(problem.Panel);
        return new(density * part, density * mesh, density * lines, density * (drawnOff + after));
    }

    /// <summary>Volume of the hoses that one feed finds full, its own and that of the pot it is the first to draw from [m³].</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="feed">Index of the feed.</param>
    internal static double PrimedVolume(Panel panel, int feed)
    {
        string? pot = panel.Feeds[feed].Pot;
        bool isFirst = pot is not null && panel.Feeds.Take(feed).All(other => other.Pot != pot);
        return VolumeOf(panel.Feeds[feed].Hose) + (isFirst ? VolumeOf(panel.Pots.FirstOrDefault(one => one.Name == pot)?.Hose) : 0);
    }

    private static double PrimedVolume(Panel? panel) => panel is null ? 0 : Enumerable.Range(0, panel.Feeds.Count).Sum(feed => PrimedVolume(panel, feed));

    private static double VolumeOf(Hose? hose) => hose is { IsPrimed: true } ? Math.PI / 4 * hose.Bore * hose.Bore * hose.Length : 0;

    private static (double Part, double Mesh) Room(FillProblem problem)
    {
        double part = 0, mesh = 0;
        for (int node = 0; node < problem.Operator.NodeCount; node++)
        {
            if (problem.StaysInPart(node)) part += problem.PoreVolume[node];
            else if (problem.CellOf(node) >= 0) mesh += problem.PoreVolume[node];
        }

        return (part, mesh);
    }
}
