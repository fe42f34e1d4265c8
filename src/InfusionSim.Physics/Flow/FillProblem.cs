using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Flow;

/// <summary>A panel as numbers: pore volume of each cell, conductances between cells and to the lines. Knows no minute and no resin.</summary>
/// <remarks>Arrays run [rows × columns], x fastest.</remarks>
public sealed class FillProblem
{
    /// <summary>The panel it was made from; null for a problem made by hand in a test.</summary>
    public Panel? Panel { get; init; }

    /// <summary>The cells.</summary>
    public required CutCellGrid Cells { get; init; }

    /// <summary>Conductances between cells, and from cells to all feeds and to vents that pass resin [m³].</summary>
    public required LatticeOperator Operator { get; init; }

    /// <summary>Volume that resin can fill in each cell [m³]; 0 without cloth.</summary>
    public required double[] PoreVolume { get; init; }

    /// <summary>Where each feed touches the cloth, in the panel's order.</summary>
    public required IReadOnlyList<LineContact> Feeds { get; init; }

    /// <summary>Pressure of each feed above the bag's, over the driving pressure [-]; 1 for a feed at the pressure of the shop.</summary>
    public required IReadOnlyList<double> FeedPressures { get; init; }

    /// <summary>Where each vent touches the cloth, in the panel's order.</summary>
    public required IReadOnlyList<LineContact> Vents { get; init; }

    /// <summary>Whether each vent passes resin when wet.</summary>
    public required IReadOnlyList<bool> VentPassesResin { get; init; }

    /// <summary>Supply per unit of drive clock: conductance to each feed times its pressure [m³]. [rows × columns], x fastest.</summary>
    public double[] Supply()
    {
        double[] supply = new double[Operator.CellCount];
        for (int feed = 0; feed < Feeds.Count; feed++)
            foreach (CellContact contact in Feeds[feed].Contacts) supply[contact.Cell] += contact.Conductance * FeedPressures[feed];
        return supply;
    }
}
