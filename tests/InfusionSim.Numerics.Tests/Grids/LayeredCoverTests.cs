using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Numerics.Tests.Grids;

public class LayeredCoverTests
{
    private static readonly CutCellGrid Cells = CutCellBuilder.Build(
        new Region(new Ring([new(0, 0), new(1, 0.05), new(1, 0.9), new(0.4, 1), new(0, 0.7)]), [Rectangle(0.42, 0.37, 0.55, 0.61)]), 0.1);

    [Fact]
    public void AreasSeen_FrameOfTwoSheets_LeavesTheLowestInItsMiddle()
    {
        // Two bars that cross: the lower one is seen beside the upper one alone.
        IReadOnlyList<double[]> seen = LayeredCover.AreasSeen([null, Rectangle(0.2, 0.2, 0.8, 0.3), Rectangle(0.6, 0.15, 0.7, 0.5)], Cells);

        seen[2].Sum().ShouldBe(0.1 * 0.35, 1e-12);
        seen[1].Sum().ShouldBe(0.6 * 0.1 - 0.1 * 0.1, 1e-12);
        (seen[0].Sum() + seen[1].Sum() + seen[2].Sum()).ShouldBe(Cells.Area.Sum(), 1e-12);
    }

    [Fact]
    public void AreasSeen_SheetUnderOneOverEverything_IsNotSeen()
    {
        IReadOnlyList<double[]> seen = LayeredCover.AreasSeen([Rectangle(0.2, 0.2, 0.8, 0.3), null], Cells);

        seen[0].Sum().ShouldBe(0);
        seen[1].ShouldBe(Cells.Area);
    }

    [Fact]
    public void AreasSeen_AnySheets_FillEachCellExactly()
    {
        Gen<Ring> sheet = Gen.Select(
            Gen.Double[-0.2, 0.8], Gen.Double[-0.2, 0.8], Gen.Double[0.01, 0.7], Gen.Double[0.01, 0.7], (x, y, w, h) => Rectangle(x, y, x + w, y + h));
        sheet.Array[1, 4].Sample(sheets =>
        {
            IReadOnlyList<double[]> seen = LayeredCover.AreasSeen([null, .. sheets], Cells);
            for (int cell = 0; cell < Cells.Area.Length; cell++) seen.Sum(areas => areas[cell]).ShouldBe(Cells.Area[cell], 1e-12);
        }, iter: 100);
    }

    private static Ring Rectangle(double left, double bottom, double right, double top) =>
        new([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]);
}
