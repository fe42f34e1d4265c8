using Grpc.Core;
using Grpc.Net.Client;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;

namespace InfusionSim.Service.Tests.Fills;

/// <summary>What a real lay-up has, the whole way over the wire with the real physics.</summary>
public sealed class RealLayUpTests
{
    private static void OnTheFloor(InfusionPlan plan)
    {
        plan.Pots.Add(new Pot { Name = "pail", LevelMm = -1000 });
        plan.Feeds[0].Pot = "pail";
    }

    private static async Task<PredictFillResponse> PredictAsync(Action<InfusionPlan> change)
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using GrpcChannel channel = GrpcChannel.ForAddress(host.GrpcAddress);
        var request = new PredictFillRequest { Plan = StraightStrip.With(change), WithFrontMap = true };
        PredictFillResponse answer = await new FillService.FillServiceClient(channel).PredictFillAsync(request);
        answer.Forecast.MassBalanceErrorRatio.ShouldBeLessThanOrEqualTo(1e-9);
        return answer;
    }

    private static void Shape(InfusionPlan plan, double lengthMm, double widthMm, double cellMm)
    {
        plan.Preform.Outline = new Ring { Points = { At(0, 0), At(lengthMm, 0), At(lengthMm, widthMm), At(0, widthMm) } };
        plan.Feeds[0].Path = new Protocol.V1.Path { Points = { At(0, 0), At(0, widthMm) } };
        plan.Vents[0].Path = new Protocol.V1.Path { Points = { At(lengthMm, 0), At(lengthMm, widthMm) } };
        plan.TimingMarks[0].At = At(lengthMm / 2, widthMm / 2);
        plan.Resolution.CellMm = cellMm;
        plan.Preform.PermeabilityFactor = 1;
    }

    private static Point At(double x, double y) => new() { XMm = x, YMm = y };

    private static FlowMesh Mesh(double k3) => new() { ThicknessMm = 1, Porosity = 0.85, Permeability = new Permeability { K1M2 = 3e-9, K3M2 = k3 } };

    private static string? LineOf(PredictFillResponse answer, string label) => answer.Answer.FirstOrDefault(line => line.Label == label)?.Text;

    [Fact]
    public async Task PredictFill_MeshOpenThrough_AnswersLayersInParallel()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 1000, 40, 20);
            plan.Preform.Zones[0].Permeability.K3M2 = 1e-6;
            plan.FlowMeshes.Add(Mesh(1e-6));
        });

        // t = Φ μ L² / (2 T Δp) = 2.35e-3 · 0.2 / (2 · 3.3e-12 · 1e5) = 712.12 s (Darcy's law, layers in parallel, derived). A K₃ of 1e-6 leaves no lag.
        answer.Forecast.FillTimeS.ShouldBe(712.1212, 0.71);
        answer.Forecast.ResinInMeshCm3.ShouldBe(34, 34e-6);
        answer.Forecast.ResinInPreformCm3.ShouldBe(60, 60e-6);
        answer.FrontMap.ToolSide.Squares.Length.ShouldBe(answer.FrontMap.Squares.Length);
        LineOf(answer, "Resin").ShouldBe("66 g in the cloth, 37 g in the mesh: 103 g through the feeds");
    }

    [Fact]
    public async Task PredictFill_MeshOnDenseCloth_TellsTheLagAndWhereToStopTheMesh()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 600, 20, 5);
            // The closed form leaves out what runs along the laminate.
            plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 1e-13, K3M2 = 5e-12 };
            plan.FlowMeshes.Add(Mesh(1e-8));
        });

        FillForecast forecast = answer.Forecast;
        // Lag of this mesh on this cloth in closed form: 45.5 mm (derived; the squares are 5 mm).
        forecast.Lag.LengthMm.ShouldBe(45.5, 2);
        forecast.Lag.StopMeshBeforeVentMm.ShouldBe(45.5, 2);
        forecast.Lag.MeshToVentMm.ShouldBe(0);
        forecast.TimingMarks[0].ToolSideArrivalTimeS.ShouldBeGreaterThan(forecast.TimingMarks[0].ArrivalTimeS);
        int middle = answer.FrontMap.Grid.Columns / 2;
        answer.FrontMap.ToolSide.ArrivalTimeS[middle].ShouldBeGreaterThan(answer.FrontMap.ArrivalTimeS[middle]);
        LineOf(answer, "Tool").ShouldNotBeNull().ShouldEndWith("; end the mesh 46 mm before the vent");
    }

    [Fact]
    public async Task WatchFill_MeshOnDenseCloth_ShowsBothSides()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using GrpcChannel channel = GrpcChannel.ForAddress(host.GrpcAddress);
        var request = new WatchFillRequest
        {
            Moments = 2,
            WithPressure = true,
            Plan = StraightStrip.With(plan =>
            {
                Shape(plan, 600, 20, 10);
                plan.FlowMeshes.Add(Mesh(1e-8));
            }),
        };
        using AsyncServerStreamingCall<WatchFillResponse> call = new FillService.FillServiceClient(channel).WatchFill(request);
        var moments = new List<FillMoment>();

        await foreach (WatchFillResponse message in call.ResponseStream.ReadAllAsync())
            if (message.Moment is not null) moments.Add(message.Moment);

        moments[0].ToolSide.WetShare.Length.ShouldBe(moments[0].WetShare.Length);
        moments[0].ToolSide.WetShare.Sum(share => share).ShouldBeLessThan(moments[0].WetShare.Sum(share => share));
        moments[0].ToolSide.PressureMbarAbs.Count.ShouldBe(moments[0].PressureMbarAbs.Count);
        moments[1].ToolSide.WetShare.ShouldAllBe(share => share == 255);
    }

    [Theory]
    [InlineData(1e-10, false, 1266.9208)]
    [InlineData(1e-10, true, 1264.9208)]
    [InlineData(2e-9, false, 79.4208)]
    [InlineData(2e-9, true, 77.4208)]
    public async Task PredictFill_Hose_TakesItsTimeAndItsShareOfThePressure(double permeability, bool primed, double seconds)
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 500, 500, 20);
            plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = permeability };
            plan.Feeds[0].Hose = new Hose { BoreMm = 8, LengthM = 2, Primed = primed };
        });

        // 2 m of 8 mm bore are worth 8KAL/(πr⁴) of cloth; empty they fill in 4μL²/(r²Δp) = 2 s (Hagen and Poiseuille, derived). Their volume is πr²L
        // = 100.53 cm³.
        answer.Forecast.FillTimeS.ShouldBe(seconds, 2e-3 * seconds);
        answer.Forecast.Feeds[0].LineVolumeCm3.ShouldBe(primed ? 0 : 100.531, 0.01);
        // The strip takes its permeability as exact, so there is no band to be an estimate.
        answer.Forecast.Likely.Basis.ShouldContain("exact");
    }

    [Fact]
    public async Task PredictFill_FeedLineWithABore_TellsThatItsEndIsWeak()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 100, 2000, 10);
            plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 1e-9 };
            plan.Feeds[0].BoreMm = 8;
        });

        FillForecast forecast = answer.Forecast;
        LineForecast line = forecast.Feeds[0].Line;
        line.Points[0].DistanceM.ShouldBe(0);
        line.Points[^1].DistanceM.ShouldBe(2);
        line.Points.Zip(line.Points.Skip(1)).ShouldAllBe(pair => pair.Second.PressureRatio <= pair.First.PressureRatio);
        line.EndAt.ShouldBe(At(0, 2000));
        Finding weak = forecast.Findings.Single(finding => finding.Kind == FindingKind.LineEndWeak);
        weak.Amount.ShouldBe(line.EndPressureRatio / line.StartPressureRatio, 1e-9);
        LineOf(answer, "Lines").ShouldNotBeNull().ShouldStartWith("F1 feeds with ");
        forecast.Feeds[0].LineVolumeCm3.ShouldBe(Math.PI * 0.16 * 200, 0.5);
    }

    [Fact]
    public async Task PredictFill_GapAlongAnEdge_RunsAheadAndCounts()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 500, 200, 10);
            plan.TimingMarks.Add(new TimingMark { Name = "M2", At = At(250, 10) });
            plan.Gaps.Add(new Gap { Path = new Protocol.V1.Path { Points = { At(0, 0), At(490, 0) } }, WidthMm = 2 });
        });

        FillForecast forecast = answer.Forecast;
        forecast.TimingMarks[1].ArrivalTimeS.ShouldBeLessThan(0.1 * forecast.TimingMarks[0].ArrivalTimeS);
        LineOf(answer, "Resin").ShouldNotBeNull().ShouldStartWith("168 g in cloth and gaps, ");
    }

    [Fact]
    public async Task PredictFill_TurnedCloth_FillsAnEllipseInTheTimeOfTheFormula()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Ring ellipse = new() { Points = { Enumerable.Range(0, 360).Select(k => At(300 * Math.Cos(k * Math.PI / 180), 200 * Math.Sin(k * Math.PI / 180))) } };
            plan.Preform.Outline = ellipse;
            plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 4e-10, K2M2 = 1e-10, AngleDeg = 30 };
            plan.Feeds[0].Path = new Protocol.V1.Path { Points = { ellipse.Points, ellipse.Points[0] } };
            plan.Vents[0].Path = new Protocol.V1.Path { Points = { At(0, 0) } };
            plan.Vents[0].Kind = VentKind.Membrane;
            plan.TimingMarks.Clear();
            plan.Resolution.CellMm = 8;
        });

        // φμ / (2Δp (Kxx/a² + Kyy/b²)) = 62.6087 s with Kxx 3.25e-10 and Kyy 1.75e-10: the pressure 1 − x²/a² − y²/b² does not feel Kxy (derived).
        answer.Forecast.FillTimeS.ShouldBe(62.6087, 0.005 * 62.6087);
    }

    [Theory]
    [InlineData(0, 5391.43)]
    [InlineData(180, 4667.21)]
    public async Task PredictFill_UprightStrip_FeelsTheWeightOfTheResin(double uphill, double seconds)
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 1000, 40, 40);
            plan.Resin.GelTimeMin = 1000;
            plan.Slope = new Slope { AngleDeg = 90, UphillDeg = uphill };
        });

        // t = φμ/(Kρg) (∓L − H ln(1 ∓ L/H)) with H = Δp/(ρg) = 9.27 m (Darcy's law with weight, derived).
        answer.Forecast.FillTimeS.ShouldBe(seconds, 5e-3 * seconds);
        answer.Forecast.HasHeightReachedMm.ShouldBeFalse();
    }

    [Fact]
    public async Task PredictFill_PotThatStandsLow_LosesItsHead()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 600, 40, 20);
            plan.Pots.Add(new Pot { Name = "pail", LevelMm = -1000 });
            plan.Feeds[0].Pot = "pail";
        });

        // 1 m of resin takes ρg = 10,787 Pa of the 100,000 Pa that drive: 1800 s / (1 − 0.10787).
        answer.Forecast.FillTimeS.ShouldBe(1800 / (1 - 0.1078732), 1);
    }

    [Fact]
    public async Task PredictFill_PotThatStandsLowAndAVacuumThatIsPulledBack_TellBoth()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 600, 40, 20);
            OnTheFloor(plan);
            plan.Vents[0].Shuts = new Moment { WhenReached = plan.Vents[0].Name };
            plan.Bag.Steps.Add(new BagStep { When = new Moment { WhenFull = true }, PressureMbarAbs = 500 });
        });

        answer.Forecast.FillTimeS.ShouldBe(1800 / (1 - 0.1078732), 1);
        answer.Forecast.ClampEvents.Count.ShouldBe(2);
    }

    [Fact]
    public async Task PredictFill_VacuumTooWeakForThePot_IsRefusedWithWhatToDo()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using GrpcChannel channel = GrpcChannel.ForAddress(host.GrpcAddress);
        InfusionPlan plan = StraightStrip.With(change =>
        {
            Shape(change, 600, 40, 20);
            OnTheFloor(change);
            change.Bag.Steps.Add(new BagStep { When = new Moment { WhenFull = true }, PressureMbarAbs = 950 });
        });

        RpcException refusal = await Should.ThrowAsync<RpcException>(
            () => new FillService.FillServiceClient(channel).PredictFillAsync(new PredictFillRequest { Plan = plan }).ResponseAsync);

        FaultStatus.ReasonOf(refusal).ShouldBe(ErrorReason.NotComputedYet);
        FaultStatus.Read(refusal).ShouldHaveSingleItem().Path.ShouldBe("bag.steps");
    }

    [Fact]
    public async Task PredictFill_TooSteepToClimb_IsAForecastThatSaysHowHighItGets()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 1000, 40, 20);
            plan.Bag.PressureMbarAbs = 950;
            plan.Resin.GelTimeMin = 10_080;
            plan.Slope = new Slope { AngleDeg = 90 };
        });

        // 63.25 mbar carry a column of Δp/(ρg) = 586 mm; one square is 20 mm.
        answer.Forecast.Outcome.ShouldBe(Outcome.StopsShort);
        answer.Forecast.HeightReachedMm.ShouldBe(586.3, 20);
        answer.Answer[0].Text.ShouldMatch("^climbs [56][0-9]{2} mm and comes to rest ");
        answer.Forecast.Findings.ShouldContain(finding => finding.Kind == FindingKind.StopsShort && finding.Sentence.Contains("Raise the pot"));
    }

    [Fact]
    public async Task PredictFill_ResinThatWouldRunBack_IsRefusedWithWhatToDo()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using GrpcChannel channel = GrpcChannel.ForAddress(host.GrpcAddress);
        InfusionPlan plan = StraightStrip.With(change =>
        {
            // A vent line far below the front drinks so much that the pressure above it falls below the bag's.
            Shape(change, 1000, 1000, 50);
            change.Feeds[0].Path = new Protocol.V1.Path { Points = { At(500, 500) } };
            change.Vents[0].Path = new Protocol.V1.Path { Points = { At(0, 300), At(1000, 300) } };
            change.Slope = new Slope { AngleDeg = 90, UphillDeg = 90 };
            change.Bag.PressureMbarAbs = 923.35;
            change.Resin.GelTimeMin = 10_080;
        });

        RpcException refusal = await Should.ThrowAsync<RpcException>(
            () => new FillService.FillServiceClient(channel).PredictFillAsync(new PredictFillRequest { Plan = plan }).ResponseAsync);

        refusal.StatusCode.ShouldBe(StatusCode.InvalidArgument);
        FaultStatus.ReasonOf(refusal).ShouldBe(ErrorReason.NotComputedYet);
        FaultStatus.Read(refusal).ShouldHaveSingleItem().Path.ShouldBe("slope");
    }

    [Fact]
    public async Task PredictFill_CoreBetweenTheSkins_FillsItToo()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 400, 200, 20);
            plan.Cores.Add(new Core
            {
                ThicknessMm = 10,
                Area = new Ring { Points = { At(100, 0), At(300, 0), At(300, 200), At(100, 200) } },
                Grooves = new Grooves { WidthMm = 2, DepthMm = 2, PitchMm = 20, AngleDeg = 30 },
                Holes = new Holes { DiameterMm = 3, PitchMm = 40 },
            });
        });

        answer.Forecast.Outcome.ShouldBe(Outcome.Fills);
        // The skins hold 120 cm³; grooves and holes 0.2 · 0.2 · (0.1 · 2 mm + share of the holes) of 10 mm on top.
        answer.Forecast.ResinInPreformCm3.ShouldBe(120 + 40 * 0.2 + 40 * 10 * 0.0044, 0.5);
    }

    [Fact]
    public async Task PredictFill_PliesAtBothAngles_FillLikeTheirMean()
    {
        PredictFillResponse answer = await PredictAsync(plan =>
        {
            Shape(plan, 600, 40, 20);
            plan.Preform.Zones[0].Permeability = null;
            plan.Preform.Zones[0].ClearThicknessMm();
            plan.Preform.Zones[0].LayUp = new LayUp { Plies = { Ply(45), Ply(-45) } };
        });

        // ±45° in equal parts conduct like (K1 + K2)/2 = 2.5e-10 both ways: φμL²/(2KΔp) = 720 s.
        answer.Forecast.FillTimeS.ShouldBe(720, 720e-6);
        answer.Plan.Preform.Zones[0].ThicknessMm.ShouldBe(3);

        static Ply Ply(double angle) => new() { AngleDeg = angle, ThicknessMm = 1.5, Permeability = new Permeability { K1M2 = 4e-10, K2M2 = 1e-10 } };
    }
}
