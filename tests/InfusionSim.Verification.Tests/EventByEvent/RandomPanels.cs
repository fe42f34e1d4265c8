using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Verification.Tests.EventByEvent;

/// <summary>Panels drawn at random: cut-outs, scattered permeability and pore volume, open vents, feeds at two pressures.</summary>
public static class RandomPanels
{
    /// <summary>Seeds of the panels; drawn once from the system's entropy.</summary>
    public static IReadOnlyList<int> Seeds { get; } =
    [
        1167012521, 1037269892, 1029743661, 443202195, 657818733, 651581594, 1318882869, 334703032, 13402093, 102361201,
        283413506, 2006113907, 750336872, 1763123557, 1442810411, 2021410529, 1392574529, 2139262017, 1904272801, 1158840785,
        989057175, 2078143013, 887559000, 1902469014, 1760626694, 1910582488, 810024412, 862682084, 1562638874, 1183240975,
        2013616702, 2038828710, 917240578, 1852118753, 433442653, 976604802, 2119141467, 2095619814, 1460177880, 679439322,
        1720305220, 1704454090, 945703401, 25509792, 625044488, 1853356384, 814412290, 1338536282, 330320212, 1717551059,
        1176977243, 947183836, 2020624068, 974049461, 550155268, 1475616376, 315447324, 1712899510, 668654340, 563515613,
    ];

    /// <summary>Draws a panel.</summary>
    /// <param name="seed">Decides everything.</param>
    public static FillProblem Draw(int seed)
    {
        var random = new Random(seed);
        int columns = random.Next(20, 41), rows = random.Next(15, 31);
        const double CellSize = 0.01;
        bool[] cloth = Reachable(DrawCutouts(random, columns, rows), columns, rows);
        double spread = random.NextDouble();
        double[] mobility = new double[columns * rows], pores = new double[columns * rows];
        for (int cell = 0; cell < cloth.Length; cell++)
        {
            mobility[cell] = 3e-3 * 1e-10 * Math.Exp(spread * Normal(random));
            double porosity = 0.3 + 0.5 * random.NextDouble();
            if (cloth[cell]) pores[cell] = porosity * 3e-3 * CellSize * CellSize;
        }

        var conductances = new LatticeOperator(columns, rows);
        for (int cell = 0; cell < cloth.Length; cell++)
        {
            if (!cloth[cell]) continue;
            if (cell % columns < columns - 1 && cloth[cell + 1]) conductances.East[cell] = Harmonic(mobility[cell], mobility[cell + 1]);
            if (cell < cloth.Length - columns && cloth[cell + columns]) conductances.North[cell] = Harmonic(mobility[cell], mobility[cell + columns]);
        }

        List<LineContact> feeds = [DrawLeftEdgeFeed(random, cloth, mobility, columns, rows)];
        List<double> pressures = [1];
        if (random.NextDouble() < 0.4)
        {
            feeds.Add(DrawPoint(random, "F2", cloth, mobility, columns, feeds));
            pressures.Add(random.NextDouble() < 0.7 ? 0.3 + 0.7 * random.NextDouble() : 1);
        }

        List<LineContact> vents = [DrawPoint(random, "V1", cloth, mobility, columns, feeds)];
        bool open = random.NextDouble() < 0.5;
        foreach (CellContact contact in feeds.SelectMany(feed => feed.Contacts)) conductances.Anchor[contact.Cell] += contact.Conductance;
        if (open)
            foreach (CellContact contact in vents[0].Contacts) conductances.Anchor[contact.Cell] += contact.Conductance;

        return new FillProblem
        {
            Cells = SquareCells(columns, rows, CellSize, cloth),
            Operator = conductances,
            PoreVolume = pores,
            Feeds = feeds,
            FeedPressures = pressures,
            Vents = vents,
            VentPassesResin = [open],
        };
    }

    private static double Harmonic(double one, double other) => 2 * one * other / (one + other);

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static bool[] DrawCutouts(Random random, int columns, int rows)
    {
        bool[] cloth = new bool[columns * rows];
        Array.Fill(cloth, true);
        for (int cutouts = random.Next(0, 4); cutouts > 0; cutouts--)
        {
            int left = random.Next(2, columns - 4), bottom = random.Next(0, rows - 2);
            int right = Math.Min(columns, left + random.Next(1, columns / 3)), top = Math.Min(rows, bottom + random.Next(1, rows / 2));
            for (int j = bottom; j < top; j++)
                for (int i = left; i < right; i++) cloth[j * columns + i] = false;
        }

        return cloth;
    }

    // Cloth cut off from the fed edge is taken away, so that every panel can fill.
    private static bool[] Reachable(bool[] cloth, int columns, int rows)
    {
        bool[] reached = new bool[cloth.Length];
        var open = new Stack<int>();
        Visit(0);
        while (open.TryPop(out int cell))
        {
            if (cell % columns > 0) Visit(cell - 1);
            if (cell % columns < columns - 1) Visit(cell + 1);
            if (cell >= columns) Visit(cell - columns);
            if (cell < (rows - 1) * columns) Visit(cell + columns);
        }

        return reached;

        void Visit(int cell)
        {
            if (!cloth[cell] || reached[cell]) return;
            reached[cell] = true;
            open.Push(cell);
        }
    }

    private static LineContact DrawLeftEdgeFeed(Random random, bool[] cloth, double[] mobility, int columns, int rows)
    {
        int from = random.Next(0, rows - 3), to = random.Next(from + 1, rows);
        return new LineContact("F1", [.. Enumerable.Range(from, to - from + 1).Select(row => row * columns)
            .Where(cell => cloth[cell]).Select(cell => new CellContact(cell, 2 * mobility[cell], true))]);
    }

    private static LineContact DrawPoint(Random random, string name, bool[] cloth, double[] mobility, int columns, List<LineContact> apartFrom)
    {
        while (true)
        {
            int cell = random.Next(cloth.Length);
            if (!cloth[cell] || cell % columns < 3 || apartFrom.Any(line => line.Contacts.Any(contact => contact.Cell == cell))) continue;
            return new LineContact(name, [new CellContact(cell, (0.5 + 4 * random.NextDouble()) * mobility[cell], false)]);
        }
    }

    private static CutCellGrid SquareCells(int columns, int rows, double size, bool[] cloth)
    {
        var grid = new UniformGrid(new Point2(0, 0), size, columns, rows);
        double width = columns * size, height = rows * size;
        int count = grid.CellCount;
        return new CutCellGrid
        {
            Grid = grid,
            Region = new Region(new Ring([new(0, 0), new(width, 0), new(width, height), new(0, height)]), []),
            Area = [.. cloth.Select(inside => inside ? size * size : 0)],
            CentroidX = [.. Enumerable.Range(0, count).Select(cell => grid.CentreOf(cell).X)],
            CentroidY = [.. Enumerable.Range(0, count).Select(cell => grid.CentreOf(cell).Y)],
            EastAperture = [.. Enumerable.Range(0, count).Select(cell => cell % columns < columns - 1 && cloth[cell] && cloth[cell + 1] ? size : 0)],
            NorthAperture = [.. Enumerable.Range(0, count).Select(cell => cell + columns < count && cloth[cell] && cloth[cell + columns] ? size : 0)],
            EastMiddleY = [.. Enumerable.Range(0, count).Select(cell => grid.CentreOf(cell).Y)],
            NorthMiddleX = [.. Enumerable.Range(0, count).Select(cell => grid.CentreOf(cell).X)],
            EdgePieces = [],
            OwnerOf = [.. Enumerable.Range(0, count).Select(cell => cloth[cell] ? cell : -1)],
        };
    }
}
