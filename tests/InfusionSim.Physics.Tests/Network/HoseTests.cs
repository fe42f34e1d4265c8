using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Network;

public sealed class HoseTests
{
    private const double ClockRate = 1e5 / 0.2;
    private static readonly Ring Square = Rectangle(0, 0, 0.5, 0.5);
    private static readonly Hose Hose = new(8e-3, 2);
    private static readonly Feed LeftEdge = Feed(Path((0, 0), (0, 0.5)));

    [Theory]
    [InlineData(1e-10, false, 1266.92)]
    [InlineData(1e-10, true, 1264.92)]
    [InlineData(2e-9, false, 79.4208)]
    [InlineData(2e-9, true, 77.4208)]
    public void Hose_BeforeALineWithOnePressure_DelaysTheFill(double permeability, bool isPrimed, double expected)
    {
        FillProblem problem = Build(permeability, LeftEdge with { Hose = Hose with { IsPrimed = isPrimed } });

        double time = FillTime(problem);

        // Straight front behind a hose, in closed form to six digits.
        time.ShouldBe(expected, 1e-5 * expected);
    }

    [Fact]
    public void Hose_FilledAlone_TakesFourViscositiesLengthSquaredOverRadiusSquaredAndDrive()
    {
        FillProblem problem = Build(1e-10, LeftEdge with { Hose = Hose });

        // t = 4 μ L² / (r² Δp) = 2 s: a moment before it the cloth is dry, a moment after it takes resin.
        InCloth(problem, 2.0 * (1 - 1e-5)).ShouldBe(0);
        InCloth(problem, 2.0 * (1 + 1e-5)).ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Hose_OpenedEmpty_HoldsItsBoreTimesLength()
    {
        FillProblem problem = Build(1e-10, LeftEdge with { Hose = Hose });

        problem.Network.Nodes.Sum(node => node.Volume).ShouldBe(100.530965e-6, 1e-12);
    }

    [Fact]
    public void Hoses_FromOnePotThroughAT_DelayAsTheirSumWhenOnlyOneFeeds()
    {
        // 1 m from pot to T-piece and 1 m from there on is 2 m of hose.
        FillProblem split = FillProblemBuilder.Build(Panel(Square, 0.02, [Isotropic(1e-10)], [LeftEdge with { Hose = Hose with { Length = 1 }, Pot = "P1" }]) with
        {
            Pots = [new Pot("P1", 0, Hose with { Length = 1 })],
        });

        FillTime(split).ShouldBe(1266.92, 0.01);
    }

    [Fact]
    public void TwoFeeds_BehindOneHose_ShareItsResistance()
    {
        // Fed at both ends, each half of the panel fills through half the cloth; the shared hose carries the flow of both.
        Feed right = Feed(Path((0.5, 0), (0.5, 0.5))) with { Name = "F2", Pot = "P1" };
        Panel panel = Panel(Square, 0.01, [Isotropic(2e-9)], [LeftEdge with { Pot = "P1" }, right]) with { Pots = [new Pot("P1", 0, Hose with { IsPrimed = true })] };

        FillProblem problem = FillProblemBuilder.Build(panel);

        // Fill of two halves behind one resistance: φ μ / (K Δp) (l²/2 + λ l) with l = 0.25 m and λ = 8 K A L / (π r⁴) over the area of both, A = 2 ×
        // 0.5 × 0.003 m².
        double lambda = 2e-9 * 2 * 0.5 * 3e-3 * 2 / Passages.RoundConductance(4e-3);
        double expected = 0.5 * 0.2 / (2e-9 * 1e5) * (0.25 * 0.25 / 2 + lambda * 0.25);
        FillTime(problem).ShouldBe(expected, 1e-6 * expected);
    }

    [Fact]
    public void Panel_WithoutHosesBoresAndGaps_HasNoLineNodes() => Build(1e-10, LeftEdge).Network.Nodes.ShouldBeEmpty();

    [Fact]
    public void Vent_WithAHose_IsPlannedFromTheLineToItsEnd()
    {
        Vent vent = new("V1", new LinePath([new Point2(0.5, 0), new Point2(0.5, 0.5)]), 0.012, VentKind.Tube) { Hose = Hose, Bore = 8e-3 };
        FillProblem problem = FillProblemBuilder.Build(Panel(Square, 0.02, [Isotropic(1e-10)], [LeftEdge]) with { Vents = [vent] });

        problem.Network.Sources.ShouldBeEmpty();
        problem.Network.Drains.Count.ShouldBe(1);
        problem.Network[problem.Network.Drains[0].Node].Part.ShouldBe(LinePart.VentHose);
        problem.Vents[0].Contacts.Select(contact => contact.LineNode).ShouldBe(Enumerable.Range(problem.Network.Vents[0]!.First, 25));
        problem.Network.Nodes.Sum(node => node.Volume).ShouldBe(Math.PI * 16e-6 * 2.5, 1e-12);

        // Flow when all is wet: cloth, bore and hose in series; the bore is 60 000 times as open as the cloth.
        double[] pressure = new NodeSolver(problem).SteadyPressure();
        double flow = problem.Network.Drains.Sum(drain => drain.Conductance * pressure[drain.Node]);
        double clothAndHose = 1 / (0.5 / (1e-10 * 0.5 * 3e-3) + 2 / Passages.RoundConductance(4e-3));
        flow.ShouldBe(clothAndHose, 2e-3 * clothAndHose);
    }

    [Fact]
    public void Accounts_OfAnyState_AddUp()
    {
        Vent vent = new("V1", new LinePath([new Point2(0.5, 0), new Point2(0.5, 0.5)]), 0.012, VentKind.Tube) { Hose = Hose with { Length = 0.5 }, Bore = 8e-3 };
        FillProblem problem = FillProblemBuilder.Build(
            Panel(Square, 0.05, [Isotropic(2e-9)], [LeftEdge with { Hose = Hose, Bore = 10e-3 }]) with { Vents = [vent] });
        NodeSolver solver = new(problem);
        foreach (double time in (double[])[1, 5, 40, 90, 130, 400])
        {
            (double[] accumulated, double[] saturation) = solver.StateAt(time * ClockRate);
            ResinAccount account = ResinAccount.Of(problem, FillStart.Dry(problem), time * ClockRate, accumulated, saturation);

            account.Error.ShouldBeLessThan(1e-9);
            account.In[0].ShouldBe(account.InPart + account.Out[0], 1e-9 * account.In[0] + 1e-15);
        }
    }

    private static double InCloth(FillProblem problem, double time)
    {
        (double[] _, double[] saturation) = new NodeSolver(problem).StateAt(time * ClockRate);
        return saturation.Take(problem.Operator.CellCount).Sum();
    }

    private static double FillTime(FillProblem problem) => new NodeSolver(problem).FullClocks().Take(problem.Operator.CellCount).Max() / ClockRate;

    private static Zone Isotropic(double permeability) => new("skin", null, 3e-3, 0.5, new Permeability(permeability, permeability, permeability / 100, 0));

    private static FillProblem Build(double permeability, Feed feed) => FillProblemBuilder.Build(Panel(Square, 0.02, [Isotropic(permeability)], [feed]));
}
