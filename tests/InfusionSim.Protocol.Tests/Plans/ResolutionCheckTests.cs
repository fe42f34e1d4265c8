using System.Diagnostics;
using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.StraightStrip;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class ResolutionCheckTests
{
    [Fact]
    public void Check_GridBeyondTheLimit_NamesTheFinestThatFits()
    {
        Fault fault = PlanChecker.Check(With(plan => plan.Resolution.CellMm = 0.1)).Faults.ShouldHaveSingleItem();

        fault.ShouldBe(new Fault(
            "resolution.cellMm",
            "resolution.cellMm is 0.1 mm: 24,000,000 squares round the outline; at most 1,000,000 are computed. The finest that fits is 0.491 mm.",
            ErrorReason.TooLarge));
        PlanChecker.Check(With(plan => plan.Resolution.CellMm = 0.491)).IsSound.ShouldBeTrue();
    }

    [Fact]
    public void Check_OutlineInMetres_SaysNothingOfItsSquares() =>
        PlanChecker.Check(With(plan => plan.Preform.Outline = RingOf((0, 0), (0.6, 0), (0.6, 0.4), (0, 0.4)))).Faults.ShouldNotContain(fault => fault.Path == "resolution.cellMm");

    [Fact]
    public void Check_GridFarBeyondTheLimit_AllocatesLittleAndAnswersAtOnce()
    {
        InfusionPlan plan = With(change =>
        {
            change.Preform.Outline = RingOf((-90_000, -90_000), (90_000, -90_000), (90_000, 90_000), (-90_000, 90_000));
            change.Resolution.CellMm = 0.01;
        });
        PlanChecker.Check(plan);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var clock = Stopwatch.StartNew();

        PlanCheck check = PlanChecker.Check(plan);

        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBeLessThan(1024 * 1024);
        clock.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(1));
        check.Faults.ShouldContain(fault => fault.Path == "resolution.cellMm" && fault.Text.Contains("324,000,000,000,000 squares") && fault.Text.Contains("180 mm"));
    }

    [Fact]
    public void Check_CellLargerThanThePanel_IsRefused() =>
        PlanChecker.Check(With(plan => plan.Resolution.CellMm = 401)).Faults.ShouldHaveSingleItem().Text.ShouldContain("larger than the panel's smaller side of 400 mm");

    [Fact]
    public void Check_FewSquares_Warns() =>
        PlanChecker.Check(With(plan => plan.Resolution.CellMm = 100)).Warnings.ShouldHaveSingleItem().ShouldContain("only 24 squares");

    [Fact]
    public void Check_NoResolution_ChoosesATidyOneAndSaysWhich() =>
        PlanChecker.Check(With(plan => plan.Resolution = null)).Plan.Resolution.CellMm.ShouldBe(3.5);

    [Fact]
    public void Check_AnyPanelWithoutResolution_GetsAGridThatFits() =>
        Gen.Select(Gen.Double[10, 50_000], Gen.Double[10, 50_000], Gen.Double[0.001, 1]).Sample((width, height, share) =>
        {
            var box = new PanelBox(width / 1000, height / 1000);
            double cell = ResolutionCheck.UsualCellMm(box.Width * box.Height * share, box) / 1000;
            return cell > 0 && cell <= Math.Min(box.Width, box.Height) * (1 + 1e-9) && (box.SquaresOf(cell) <= PlanLimits.MostSquares || box.Width > 1e4 * box.Height || box.Height > 1e4 * box.Width);
        });

    [Fact]
    public void FinestCell_AnyPanel_FitsAndATwoPerCentFinerOneDoesNot() =>
        Gen.Select(Gen.Double[10, 50_000], Gen.Double[10, 50_000]).Sample((width, height) =>
        {
            var box = new PanelBox(width / 1000, height / 1000);
            double cell = ResolutionCheck.FinestCellMm(box) / 1000;
            return box.SquaresOf(cell) <= PlanLimits.MostSquares && (box.SquaresOf(0.98 * cell) > PlanLimits.MostSquares || Math.Min(width, height) < 10 * cell * 1000);
        });

    [Fact]
    public void SquaresOf_AnyPanel_AgreesWithTheGridThatIsCut() =>
        Gen.Select(Gen.Double[20, 5000], Gen.Double[20, 5000], Gen.Double[5, 20]).Sample((width, height, cell) =>
        {
            Region region = PlanMapping.RegionOf(new Preform { Outline = RingOf((3, 7), (3 + width, 7), (3 + width, 7 + height), (3, 7 + height)) });
            return PanelBox.Of(region.Outline).SquaresOf(cell / 1000) == Numerics.Grids.CutCellBuilder.GridOver(region, cell / 1000).CellCount;
        });
}
