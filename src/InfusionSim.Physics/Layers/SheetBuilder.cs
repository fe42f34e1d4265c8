using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>Lays the layers of a panel on its cells.</summary>
internal static class SheetBuilder
{
    // Where a core leaves off the skins touch. A film of them takes the core's place there, so that each layer keeps one neighbour above and below:
    // a tenth of what the sub-layers on both sides hold, enough to fill as steadily as they do.
    private const double FilmShare = 0.1;

    /// <summary>The layers, lowest first.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="stack">Its layers.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="cancellation">Stops the work between rows.</param>
    public static IReadOnlyList<LayerSheet> Of(Panel panel, PanelLayers stack, CutCellGrid cells, CancellationToken cancellation = default)
    {
        List<LayerSheet> sheets = [];
        ClothMap laminate = new(panel.Zones);
        Layer whole = new(LayerKind.Laminate, "laminate", panel.Zones);
        IReadOnlyList<double[]> laminateSeen = LayerCover.SeenOf(whole, cells, cancellation);
        LatticeOperator laminateConductances = Conductances(panel, laminate, cells, cancellation);
        for (int index = stack.Layers.Count - 1; index >= 0; index--)
        {
            Layer layer = stack.Layers[index];
            bool isLaminate = layer.Kind == LayerKind.Laminate;
            LayerCover cover = LayerCover.Of(layer, cells, isLaminate ? laminateSeen : LayerCover.SeenOf(layer, cells, cancellation), cancellation);
            ClothMap cloth = isLaminate && layer.ThicknessShare == 1 ? laminate : new(layer.Zones, layer.MayBeBare ? panel.Region : null);
            CutCellGrid own = CoveredCells.Of(cells, cover.Area);
            sheets.Add(new()
            {
                Layer = layer,
                FirstNode = index * cells.Grid.CellCount,
                Cells = own,
                Cloth = cloth,
                Cover = cover,
                Conductances = isLaminate ? Scaled(laminateConductances, layer.ThicknessShare) : Conductances(panel, cloth, own, cancellation),
                PoreVolume = cover.Pores,
                IsUnder = Under(sheets, cells),
            });
        }

        sheets.Reverse();
        for (int index = 1; index < sheets.Count; index++)
        {
            if (sheets[index].Layer.Kind == LayerKind.Core) LayFilm(sheets[index - 1], sheets[index], sheets[index + 1], cells);
        }

        return sheets;
    }

    private static LatticeOperator Conductances(Panel panel, ClothMap cloth, CutCellGrid cells, CancellationToken cancellation)
    {
        CellZones zones = CellZones.Of(cells.Grid, cloth, cancellation);
        LatticeOperator conductances = new(cells.Grid.Columns, cells.Grid.Rows);
        FaceConductances.Write(cells, cloth, zones, conductances, cancellation: cancellation);
        SlantedWalls.Correct(cells, cloth, OutlineContacts.FedPieces(panel, cells), conductances);
        IReadOnlyList<WallExit> exits = WallExits.Of(cells, cloth);
        WallBands.Correct(cells, cloth, exits, OutlineContacts.FedExits(panel, exits), conductances);
        cancellation.ThrowIfCancellationRequested();
        return conductances;
    }

    private static LatticeOperator Scaled(LatticeOperator whole, double share)
    {
        if (share == 1) return whole;
        LatticeOperator part = new(whole.Columns, whole.Rows);
        foreach (StencilWay way in whole.Ways)
        {
            double[] conductance = part.Way(way.Right, way.Up).Conductance;
            for (int cell = 0; cell < conductance.Length; cell++) conductance[cell] = share * way.Conductance[cell];
        }

        return part;
    }

    private static bool[]? Under(List<LayerSheet> above, CutCellGrid cells)
    {
        if (above.Count == 0) return null;
        bool[] under = new bool[cells.Grid.CellCount];
        foreach (LayerSheet sheet in above)
        {
            for (int cell = 0; cell < under.Length; cell++) under[cell] |= sheet.Cells.HasCloth(cell);
        }

        return under;
    }

    private static void LayFilm(LayerSheet below, LayerSheet core, LayerSheet above, CutCellGrid cells)
    {
        for (int cell = 0; cell < cells.Area.Length; cell++)
        {
            double bare = cells.Area[cell] - core.Cover.Area[cell];
            if (!(bare > 0)) continue;
            double share = FilmShare * bare / cells.Area[cell];
            core.PoreVolume[cell] += share * (below.PoreVolume[cell] + above.PoreVolume[cell]);
            below.PoreVolume[cell] *= 1 - share;
            above.PoreVolume[cell] *= 1 - share;
        }
    }
}
