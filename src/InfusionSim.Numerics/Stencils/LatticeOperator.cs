namespace InfusionSim.Numerics.Stencils;

/// <summary>Conductances between the cells of a stack of grids, the nodes of lines beside them, and fixed pressures: the matrix A of (A w)ᵢ = Σⱼ Tᵢⱼ
/// (wᵢ − wⱼ) + gᵢ wᵢ.</summary>
/// <remarks>
/// Nodes 0 to CellCount − 1 are cells, [layers × rows × columns], x fastest, lowest layer first; the line nodes follow. A cell conducts to
/// its neighbours in the row and the column, along slanted ways to cells further off, and to the cell above it; everything that
/// belongs to no grid (the bore of a feed line, a hose, a gap) is made of line nodes and links.
/// All conductances are at least 0, so A is a symmetric M-matrix. Unit of a conductance here: [m³] (permeability × thickness × width / distance).
/// </remarks>
public sealed class LatticeOperator
{
    private readonly List<StencilWay> _ways;
    private readonly List<NodeLink> _links = [];
    private readonly Dictionary<int, List<NodeNeighbour>> _linksOf = [];

    /// <summary>Makes an operator without conductances.</summary>
    /// <param name="columns">Cells in a row [-], at least 1.</param>
    /// <param name="rows">Rows [-], at least 1.</param>
    /// <param name="layers">Layers through the thickness [-], at least 1.</param>
    /// <param name="lineNodes">Nodes that lie in no grid [-], at least 0.</param>
    public LatticeOperator(int columns, int rows, int layers = 1, int lineNodes = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(layers, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(lineNodes);
        Columns = columns;
        Rows = rows;
        Layers = layers;
        LineNodes = lineNodes;
        East = new double[CellCount];
        North = new double[CellCount];
        Above = new double[layers > 1 ? CellCount : 0];
        Anchor = new double[NodeCount];
        _ways = [new(1, 0, East), new(0, 1, North)];
    }

    /// <summary>Cells in a row [-].</summary>
    public int Columns { get; }

    /// <summary>Rows [-].</summary>
    public int Rows { get; }

    /// <summary>Layers through the thickness, counted from the lowest [-].</summary>
    public int Layers { get; }

    /// <summary>Nodes that lie in no grid [-].</summary>
    public int LineNodes { get; }

    /// <summary>Number of cells in one layer [-].</summary>
    public int CellsInLayer => Columns * Rows;

    /// <summary>Number of cells in all layers [-].</summary>
    public int CellCount => Columns * Rows * Layers;

    /// <summary>Number of cells and line nodes together [-].</summary>
    public int NodeCount => CellCount + LineNodes;

    /// <summary>Conductance between (i, j) and (i+1, j) of a layer [m³]; 0 in the last column. [layers × rows × columns], x fastest.</summary>
    public double[] East { get; }

    /// <summary>Conductance between (i, j) and (i, j+1) of a layer [m³]; 0 in the last row. [layers × rows × columns], x fastest.</summary>
    public double[] North { get; }

    /// <summary>Conductance between a cell and the one above it in the next layer [m³]; 0 in the last layer, empty with one layer. [layers × rows ×
    /// columns], x fastest.</summary>
    public double[] Above { get; }

    /// <summary>Sum of the conductances from a node to feeds and open vents [m³]. [nodes].</summary>
    public double[] Anchor { get; }

    /// <summary>All ways within a layer: East, North, and the slanted ones that were asked for.</summary>
    public IReadOnlyList<StencilWay> Ways => _ways;

    /// <summary>Conductances that at least one line node has a part in.</summary>
    public IReadOnlyList<NodeLink> Links => _links;

    /// <summary>The way along an offset, made without conductance when it is new.</summary>
    /// <param name="right">Columns to the right [-].</param>
    /// <param name="up">Rows above [-]; above 0, or 0 with <paramref name="right"/> above 0.</param>
    public StencilWay Way(int right, int up)
    {
        if (up < 0 || (up == 0 && right <= 0)) throw new ArgumentOutOfRangeException(nameof(up), up, $"The offset ({right}, {up}) does not lead up, nor right along the row; turn it round.");
        StencilWay? way = _ways.Find(known => known.Right == right && known.Up == up);
        if (way is null) _ways.Add(way = new(right, up, new double[CellCount]));
        return way;
    }

    /// <summary>Joins two nodes, at least one of them a line node.</summary>
    /// <param name="first">Index of one node.</param>
    /// <param name="second">Index of the other.</param>
    /// <param name="conductance">Conductance between them [m³], at least 0.</param>
    public void Link(int first, int second, double conductance)
    {
        if (first == second || Math.Min(first, second) < 0 || Math.Max(first, second) >= NodeCount || Math.Max(first, second) < CellCount)
            throw new ArgumentException($"Nodes {first} and {second} cannot be linked: one of them must be a line node ({CellCount} to {NodeCount - 1}).");
        if (!(conductance >= 0)) throw new ArgumentOutOfRangeException(nameof(conductance), conductance, "A conductance cannot be below 0.");
        if (conductance == 0) return;
        _links.Add(new(first, second, conductance));
        LinksOf(first).Add(new(second, conductance));
        LinksOf(second).Add(new(first, conductance));
    }

    /// <summary>Sum of all conductances of a node: the diagonal of A [m³].</summary>
    /// <param name="node">Index of the node.</param>
    public double DiagonalOf(int node)
    {
        double sum = Anchor[node];
        if (node < CellCount)
        {
            int column = node % Columns, row = node / Columns % Rows;
            foreach (StencilWay way in _ways)
            {
                sum += way.Conductance[node];
                if (IsInside(column - way.Right, row - way.Up)) sum += way.Conductance[node - way.Up * Columns - way.Right];
            }

            if (Layers > 1)
            {
                sum += Above[node];
                if (node >= CellsInLayer) sum += Above[node - CellsInLayer];
            }
        }

        if (_linksOf.TryGetValue(node, out List<NodeNeighbour>? links)) foreach (NodeNeighbour link in links) sum += link.Conductance;
        return sum;
    }

    /// <summary>Collects the nodes that a node conducts to.</summary>
    /// <param name="node">Index of the node.</param>
    /// <param name="neighbours">Emptied, then filled.</param>
    public void CollectNeighbours(int node, List<NodeNeighbour> neighbours)
    {
        ArgumentNullException.ThrowIfNull(neighbours);
        neighbours.Clear();
        if (node < CellCount)
        {
            int column = node % Columns, row = node / Columns % Rows;
            foreach (StencilWay way in _ways)
            {
                int step = way.Up * Columns + way.Right;
                if (way.Conductance[node] > 0) neighbours.Add(new(node + step, way.Conductance[node]));
                if (IsInside(column - way.Right, row - way.Up) && way.Conductance[node - step] > 0) neighbours.Add(new(node - step, way.Conductance[node - step]));
            }

            if (Layers > 1)
            {
                if (Above[node] > 0) neighbours.Add(new(node + CellsInLayer, Above[node]));
                if (node >= CellsInLayer && Above[node - CellsInLayer] > 0) neighbours.Add(new(node - CellsInLayer, Above[node - CellsInLayer]));
            }
        }

        if (_linksOf.TryGetValue(node, out List<NodeNeighbour>? links)) neighbours.AddRange(links);
    }

    private bool IsInside(int column, int row) => (uint)column < (uint)Columns && (uint)row < (uint)Rows;

    private List<NodeNeighbour> LinksOf(int node)
    {
        if (!_linksOf.TryGetValue(node, out List<NodeNeighbour>? links)) _linksOf[node] = links = [];
        return links;
    }
}
