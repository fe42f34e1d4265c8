using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Lattice;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Lines;

/// <summary>
/// Contacts of fittings: a cluster of cells that acts like a circle a little larger than the fitting, joined to it by the resistance of the ring
/// between the two.
/// </summary>
/// <remarks>
/// Total conductance 2π√(K1·K2)·thickness / ln(r_eq/r), shared by the cells as their own flows (Peaceman, SPE J. 18 (1978) 183, from
/// memory, widened from one cell to clusters: derived). The cluster's centre is the middle of a cell, a face or a corner, whichever lies
/// nearest to the fitting, so that a fitting on an edge of the cloth along a face keeps half of a symmetric cluster, which is
/// exact by reflection, and one in a corner a quarter.
/// </remarks>
internal sealed class FittingPlacer
{
    // A cluster exactly as large as the fitting would conduct without limit.
    private const double LargestConductanceRatio = 1e3;

    // Under its mouth resin runs freely. Without this, cells ringed by the cluster, which pass nothing, would stay dry behind a vent.
    private const double FreeFlowFactor = 1e3;

    private readonly ElectrodeLibrary electrodes = new();
    private readonly CutCellGrid cells;
    private readonly ClothMap cloth;

    /// <summary>Makes a placer.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    public FittingPlacer(CutCellGrid cells, ClothMap cloth)
    {
        this.cells = cells;
        this.cloth = cloth;
    }

    /// <summary>Adds the contacts of a fitting and returns the cells under it.</summary>
    /// <param name="contacts">Contacts of the fitting.</param>
    /// <param name="place">Its middle [m].</param>
    /// <param name="radius">Its radius [m].</param>
    public IReadOnlyList<int> Add(ContactTable contacts, Point2 place, double radius)
    {
        UniformGrid grid = cells.Grid;
        (int column, int offsetX) = NearestHalf((place.X - grid.Origin.X) / grid.CellSize, grid.Columns);
        (int row, int offsetY) = NearestHalf((place.Y - grid.Origin.Y) / grid.CellSize, grid.Rows);
        ClothTensor here = cloth.At(place);
        LatticeStretch stretch = LatticeStretch.Of(here.Tensor);
        double effective = stretch.EffectiveRadius(radius);
        double inCloth = CircleShare.Inside(cells.Region, place, effective, stretch);
        foreach (ClusterElectrode electrode in electrodes.GrowingAround(here.Tensor, radius / grid.CellSize, offsetX, offsetY))
        {
            List<(int Cell, double Weight)> shares = SharesInCloth(electrode, column, row, place);
            double sum = shares.Sum(share => share.Weight);
            if (sum == 0 || inCloth == 0) throw new InvalidOperationException($"A fitting at x = {place.X * 1000:0.###} mm, y = {place.Y * 1000:0.###} mm touches no cloth.");
            double reach = EquivalentRadius(electrode, shares, inCloth);
            bool coversAll = shares.Count == cells.Area.Count(area => area > 0);
            if (reach < effective && !coversAll) continue;
            double ratio = reach > effective ? Math.Min(LargestConductanceRatio, 2 * Math.PI / Math.Log(reach / effective)) : LargestConductanceRatio;
            // A ringed cell passes nothing yet lies under the fitting too: it is named with no conductance.
            foreach ((int cell, double weight) in shares)
            {
                contacts.AddUnder(cell, ratio * inCloth * weight / sum * cloth.At(cells.CentroidOf(cell)).MeanConductance);
            }

            return [.. shares.Select(share => share.Cell)];
        }

        throw new InvalidOperationException("Clusters have no end.");
    }

    // Where the edge of the cloth runs through the cells, a cluster keeps more or less than the circle's share of its area: it acts like a larger or
    // smaller one.
    private double EquivalentRadius(ClusterElectrode electrode, List<(int Cell, double Weight)> shares, double inCloth)
    {
        double square = cells.Grid.CellSize * cells.Grid.CellSize;
        double kept = shares.Sum(share => Math.Min(square, cells.Area[share.Cell])) / (square * electrode.Cells.Count * inCloth);
        return electrode.EquivalentRadius * cells.Grid.CellSize * Math.Sqrt(kept);
    }

    /// <summary>Lets resin run freely between the cells under a fitting.</summary>
    /// <param name="under">The cells.</param>
    /// <param name="conductances">Conductances between the cells.</param>
    public void OpenUnder(IReadOnlyList<int> under, LatticeOperator conductances)
    {
        var all = under.ToHashSet();
        foreach (int cell in under)
        {
            foreach (StencilWay way in conductances.Ways)
            {
                if (all.Contains(cell + way.Up * cells.Grid.Columns + way.Right)) way.Conductance[cell] *= FreeFlowFactor;
            }
        }
    }

    private List<(int Cell, double Weight)> SharesInCloth(ClusterElectrode electrode, int column, int row, Point2 place)
    {
        UniformGrid grid = cells.Grid;
        double square = grid.CellSize * grid.CellSize;
        var weights = new Dictionary<int, double>();
        for (int k = 0; k < electrode.Cells.Count; k++)
        {
            int i = column + electrode.Cells[k].Column, j = row + electrode.Cells[k].Row;
            if (i < 0 || j < 0 || i >= grid.Columns || j >= grid.Rows) continue;
            int cell = grid.IndexOf(i, j);
            // A cell cut by the edge keeps its share of the flow, as half a cell of a reflected cluster does.
            if (cells.HasCloth(cell)) weights[cell] = electrode.Charges[k] * Math.Min(1, cells.Area[cell] / square);
        }

        return [.. ConnectedWith(place, weights).Order().Select(cell => (cell, weights[cell]))];
    }

    // Cloth across a slit or a cut-out lies under the cluster, not under the fitting.
    private HashSet<int> ConnectedWith(Point2 place, Dictionary<int, double> cluster)
    {
        int columns = cells.Grid.Columns;
        HashSet<int> reached = [];
        if (cluster.Count == 0) return reached;
        Queue<int> queue = new();
        Visit(cluster.Keys.Order().MinBy(cell => cells.CentroidOf(cell).DistanceTo(place)));
        while (queue.TryDequeue(out int cell))
        {
            if (cells.EastAperture[cell] > 0) Visit(cell + 1);
            if (cells.NorthAperture[cell] > 0) Visit(cell + columns);
            if (cell % columns > 0 && cells.EastAperture[cell - 1] > 0) Visit(cell - 1);
            if (cell >= columns && cells.NorthAperture[cell - columns] > 0) Visit(cell - columns);
        }

        return reached;

        void Visit(int cell)
        {
            if (cluster.ContainsKey(cell) && reached.Add(cell)) queue.Enqueue(cell);
        }
    }

    // Reference cell and offset in half cells of the middle or face nearest to a coordinate counted in cells.
    private static (int Cell, int Offset) NearestHalf(double coordinate, int count)
    {
        int half = (int)Math.Clamp(Math.Round(2 * coordinate), 0, 2 * count);
        return half % 2 == 1 ? ((half - 1) / 2, 0) : (half / 2 - 1, 1);
    }
}
