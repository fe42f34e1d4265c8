using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Flow;

public sealed class SlantedWallsTests
{
    private static readonly ClothMap Cloth = new([new Zone("skin", null, 3e-3, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0))]);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Correct_BesideEdgesAlongTheSquares_ChangesNothing(bool fed)
    {
        CutCellGrid cells = CutCellBuilder.Build(
            new Region(new Ring([new(0, 0), new(0.0733, 0), new(0.0733, 0.0517), new(0, 0.0517)]), []), 0.01, new Point2(-0.0034, -0.0071));
        LatticeOperator conductances = Ones(cells);

        SlantedWalls.Correct(cells, Cloth, [.. cells.EdgePieces.Select(_ => fed)], conductances);

        Open(conductances).ShouldAllBe(value => Math.Abs(value - 1) < 1e-9);
    }

    [Fact]
    public void Correct_BesideAnySlantedEdge_KeepsEveryFaceWithinAFactorOfTwo()
    {
        CutCellGrid cells = CutCellBuilder.Build(new Region(new Ring([new(0, 0), new(0.09, 0.013), new(0.061, 0.083), new(0.02, 0.071)]), []), 0.01);
        foreach (bool fed in new[] { true, false })
        {
            LatticeOperator conductances = Ones(cells);

            SlantedWalls.Correct(cells, Cloth, [.. cells.EdgePieces.Select(_ => fed)], conductances);

            Open(conductances).ShouldAllBe(value => value >= 0.5 && value <= 2);
            Open(conductances).ShouldContain(value => Math.Abs(value - 1) > 0.05);
        }
    }

    [Fact]
    public void Correct_BetweenAFedAndASealedEdge_LeavesTheFaceAsItWas()
    {
        // Where two kinds of edge meet in a cell no one direction of fall stands out.
        CutCellGrid cells = CutCellBuilder.Build(new Region(new Ring([new(0, 0), new(0.09, 0.013), new(0.061, 0.083), new(0.02, 0.071)]), []), 0.01);
        LatticeOperator conductances = Ones(cells);
        bool[] fed = [.. cells.EdgePieces.Select(piece => piece.Start.Y + piece.End.Y < 0.026)];

        SlantedWalls.Correct(cells, Cloth, fed, conductances);

        int[] both = [.. cells.EdgePieces.Select((piece, k) => (piece.Cell, Fed: fed[k])).GroupBy(pair => pair.Cell).Where(group => group.Any(pair => pair.Fed) && group.Any(pair => !pair.Fed)).Select(group => group.Key)];
        both.ShouldNotBeEmpty();
        both.Select(cell => conductances.East[cell]).Concat(both.Select(cell => conductances.North[cell])).ShouldAllBe(value => value == 0 || value == 1);
    }

    private static IEnumerable<double> Open(LatticeOperator conductances) => conductances.East.Concat(conductances.North).Where(value => value > 0);

    private static LatticeOperator Ones(CutCellGrid cells)
    {
        var conductances = new LatticeOperator(cells.Grid.Columns, cells.Grid.Rows);
        for (int cell = 0; cell < conductances.CellCount; cell++)
        {
            conductances.East[cell] = cells.EastAperture[cell] > 0 ? 1 : 0;
            conductances.North[cell] = cells.NorthAperture[cell] > 0 ? 1 : 0;
        }

        return conductances;
    }
}
