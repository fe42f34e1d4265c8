using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Network;

public sealed class AnyNetworkTests
{
    private static readonly Ring Plate = Rectangle(0, 0, 0.4, 0.3);
    private static readonly Gen<Point2> Place = Gen.Select(Gen.Double[0.01, 0.39], Gen.Double[0.01, 0.29], (x, y) => new Point2(x, y));
    private static readonly Gen<Point2> GridPlace = Gen.Select(Gen.Int[1, 39], Gen.Int[1, 29], (x, y) => new Point2(0.01 * x, 0.01 * y));
    private static readonly Gen<LinePath> AnyPath = Gen.OneOf(Place, GridPlace).Array[2, 3].Select(points => new LinePath(points));
    private static readonly Gen<double?> AnyBore = Gen.OneOf(Gen.Const((double?)null), Gen.Double[3e-3, 20e-3].Select(bore => (double?)bore));

    private static readonly Gen<Hose?> AnyHose =
        Gen.OneOf(
            Gen.Const((Hose?)null),
            Gen.Select(Gen.Double[4e-3, 15e-3], Gen.Double[0.2, 4], Gen.Bool, (bore, length, isPrimed) => (Hose?)new Hose(bore, length, isPrimed)));

    private static readonly Gen<Gap> AnyGap = Gen.Select(
        AnyPath.Where(static path => path.Points.Distinct().Count() > 1), Gen.Double[0.2e-3, 4e-3], (path, width) => new Gap("G", path, width, null));

    private static readonly Gen<Panel> AnyPanel =
        from bore in AnyBore
        from hose in AnyHose
        from permeability in Gen.Double[1e-11, 3e-9]
        from onEdge in Gen.Bool
        from path in AnyPath
        from ventBore in AnyBore
        from ventHose in AnyHose
        from gap in AnyGap
        select Panel(
            Plate,
            0.02,
            [ZoneOf("cloth", 3e-3, 0.5, permeability, permeability)],
            [Feed(Path((0, 0.02), (0, 0.25))) with { Bore = bore, Hose = hose }],
            Vent(onEdge ? Path((0.4, 0), (0.4, 0.3)) : path) with { Bore = ventBore, Hose = ventHose }) with
        {
            Gaps = [gap],
        };

    [Fact]
    public void Fill_OfAnyNetwork_LosesNoResinAndAgreesWithTheReference() => AnyPanel.Sample(
        panel =>
        {
            FillProblem problem = FillProblemBuilder.Build(panel);
            FillMap map = FillMap.Compute(problem);
            NodeSolver reference = new(problem);
            foreach (double share in (double[])[0.05, 0.4, 0.98, 1])
            {
                FillState state = map.StateAt(share * map.FillClock);
                state.MassBalanceError.ShouldBeLessThan(1e-9);

                // At the very end the last place is full and holds no pressure: the reference's sets may swing for ever.
                if (share == 1) break;
                (double[] _, double[] saturation) = reference.StateAt(share * map.FillClock);
                for (int node = 0; node < saturation.Length; node++)
                {
                    if (map.Reached[node]) state.Saturation[node].ShouldBe(saturation[node], 1e-5);
                }
            }

            FillState end = map.StateAt(map.FillClock * (1 + 1e-7));
            for (int cell = 0; cell < problem.Operator.CellCount; cell++)
            {
                if (map.Total.Fills[cell]) end.Saturation[cell].ShouldBe(1, 1e-4);
            }
        },
        iter: 25,
        threads: 1);

    // Twenty million times as conductive as the cloth: 1 − w/θ of its first length is a few units of the last digit of a double, and the flow no
    // share of what the line could bring.
    [Fact]
    public void Fill_WideLineInTightCloth_LosesNoResinAndEndsWhenTheLastPlaceIsFull() => Gen.Select(Gen.Double[1, 5], Gen.Double[15e-3, 20e-3], AnyGap).Sample(
        (permeability, bore, gap) =>
        {
            Panel panel = Panel(
                Plate,
                0.02,
                [ZoneOf("cloth", 3e-3, 0.5, permeability * 1e-12, permeability * 1e-12)],
                [Feed(Path((0, 0.02), (0, 0.25))) with { Bore = bore }],
                Vent(Path((0.4, 0), (0.4, 0.3))) with { Bore = bore }) with
            {
                Gaps = [gap],
            };
            FillMap map = FillMap.Compute(FillProblemBuilder.Build(panel));
            foreach (double share in (double[])[0.05, 0.4, 1]) map.StateAt(share * map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
            map.StateAt(map.FillClock * (1 - 1e-5)).Saturation[map.LastCell].ShouldBeLessThan(1);
            map.StateAt(map.FillClock * (1 + 1e-7)).Saturation[map.LastCell].ShouldBe(1, 1e-6);
        },
        iter: 25,
        threads: 1);
}
