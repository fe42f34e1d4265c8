using CsCheck;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Gravity;
using InfusionSim.Planning.Mixing;
using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Mixing;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using InfusionSim.Service.Fills;

namespace InfusionSim.Service.Tests.Fills;

/// <summary>Everything together in any mixture: each sound plan has a forecast whose resin adds up.</summary>
public sealed class AnyLayUpTests
{
    private static readonly Gen<InfusionPlan> Any = Gen.Select(
        Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, 7], Gen.Int[0, 2], Gen.Int[0, 12], Gen.Int[0, 5], Gen.Int[0, 5])
        .Select((mesh, core, gap, lines, slope, turn, more, clamps) => StraightStrip.With(plan =>
        {
            plan.Preform.Outline = new Ring { Points = { At(0, 0), At(300, 0), At(300, 200), At(0, 200) } };
            plan.Feeds[0].Path = new Protocol.V1.Path { Points = { At(0, 0), At(0, 200) } };
            plan.Vents[0].Path = new Protocol.V1.Path { Points = { At(300, 0), At(300, 200) } };
            plan.TimingMarks[0].At = At(150, 100);
            plan.Resolution = new Resolution { CellMm = 20 };
            plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 4e-10, K2M2 = turn % 3 == 0 ? 4e-11 : 1e-10, AngleDeg = 15 * turn };
            if (mesh is 1 or 3) plan.FlowMeshes.Add(Mesh(PanelFace.BagSide, turn));
            if (mesh is 2 or 3) plan.FlowMeshes.Add(Mesh(PanelFace.ToolSide, turn + 1));
            if (core > 0) plan.Cores.Add(Core(core, turn));
            if (gap > 0) plan.Gaps.Add(new Gap { Path = new Protocol.V1.Path { Points = { At(20, 10 * gap), At(280, 10 * gap) } }, WidthMm = 1 });
            if ((lines & 1) != 0) plan.Feeds[0].BoreMm = 10;
            if ((lines & 2) != 0) plan.Feeds[0].Hose = new Hose { BoreMm = 8, LengthM = 1, Primed = turn % 2 == 0, JoinsAt = At(more == 4 ? 100 : 0, 100) };
            if ((lines & 4) != 0) plan.Vents[0].Hose = new Hose { BoreMm = 6, LengthM = 1 };
            if (slope > 0) plan.Slope = new Slope { AngleDeg = 20 * slope, UphillDeg = 30 * turn };
            if (more == 1) plan.PeelPly = new PeelPly { ThicknessMm = 0.2, Porosity = 0.5, Permeability = new Permeability { K1M2 = 1e-10, K3M2 = 1e-12 } };
            if (more == 2) plan.Vents[0].Kind = VentKind.Membrane;
            if (more == 3) plan.Resolution.SubLayers = 4;
            if (more == 4) plan.Feeds[0].Path = new Protocol.V1.Path { Points = { At(100, 0), At(100, 200) } };
            Turn(plan, clamps);
            if (more != 5) return;
            plan.Pots.Add(new Pot { Name = "pail", LevelMm = -300, Hose = new Hose { BoreMm = 10, LengthM = 0.5 } });
            plan.Feeds[0].Pot = "pail";
        }));

    [Fact, Trait("Speed", "Slow")]
    public void Predict_AnyLayUp_AddsUp() => Any.Sample(plan =>
    {
        PlanCheck check = PlanChecker.Check(plan);
        check.Faults.ShouldBeEmpty();
        FillInputs inputs = PlanMapping.ToInputs(check);
        Forecast forecast;
        try
        {
            forecast = new PhysicsForecaster().Predict(inputs, null, CancellationToken.None);
        }
        catch (ResinRunsBackException)
        {
            return;
        }

        PredictFillResponse answer = FillAnswer.Of(forecast, inputs, check.Warnings, withFrontMap: true);
        answer.Forecast.MassBalanceErrorRatio.ShouldBeInRange(-1e-9, 1e-9);
        answer.Forecast.FilledFraction.ShouldBeInRange(0, 1 + 1e-9);
        answer.Answer.Count.ShouldBeGreaterThan(6);
        double through = answer.Forecast.Feeds.Sum(feed => feed.ResinInCm3), mesh = answer.Forecast.HasResinInMeshCm3 ? answer.Forecast.ResinInMeshCm3 : 0;
        double known = answer.Forecast.ResinInPreformCm3 + mesh + answer.Forecast.Vents.Sum(vent => vent.ResinOutCm3);
        known.ShouldBe(through, 1e-6 * through);
        (answer.FrontMap.ToolSide is not null).ShouldBe(answer.Forecast.Lag is not null);
        ForecastJson.Write(answer.Forecast).ShouldNotContain("NaN");

        // What is mixed is never less than what flows, and the pots hold all of it.
        Planning.Mixing.MixSheet mix = MixPlanner.Plan(
            inputs.Panel, forecast, MixInputMapping.ToInputs(inputs), time => new PhysicsForecaster().StateAt(
                forecast, inputs, time, false, CancellationToken.None));
        (1000 * mix.Need.Drawn).ShouldBeGreaterThan(answer.Forecast.Feeds.Sum(feed => feed.ResinInG) * (1 - 1e-6));
        mix.Pots.Sum(pot => pot.Mixed).ShouldBe(mix.Mixed, 1e-9);
        MixWords.Lines(inputs.Plan, MixSheetMapping.ToContract(mix), answer.Forecast).ShouldNotContain(line => line.Text.Contains("NaN"));
    }, iter: 30, print: plan => PlanJson.Write(plan));

    private static void Turn(InfusionPlan plan, int clamps)
    {
        if (clamps == 1) plan.Vents[0].Shuts = new Moment { WhenReached = plan.Vents[0].Name };
        if (clamps == 2) (plan.Vents[0].Shuts, plan.Feeds[0].Shuts) = (new Moment { WhenFull = true }, new Moment { WhenFull = true });
        if (clamps == 3) plan.Bag.Steps.Add(new BagStep { When = new Moment { AtMin = 1 }, PressureMbarAbs = 300 });
        if (clamps != 4) return;
        Moment reached = new() { WhenReached = plan.TimingMarks[0].Name };
        plan.Feeds.Add(new Feed { Name = "late", Opens = reached, Path = new Protocol.V1.Path { Points = { At(150, 60), At(150, 140) } } });
    }

    private static FlowMesh Mesh(PanelFace face, int turn) => new()
    {
        Face = face,
        Area = turn % 2 == 0 ? null : new Ring { Points = { At(0, 0), At(205, 0), At(205, 200), At(0, 200) } },
        ThicknessMm = 1,
        Porosity = 0.85,
        Permeability = new Permeability { K1M2 = 3e-9, K2M2 = 1e-9, AngleDeg = 10 * turn },
    };

    private static Core Core(int kind, int turn) => new()
    {
        ThicknessMm = 10,
        ToolSkinFraction = 0.4,
        Area = turn % 3 == 0 ? null : new Ring { Points = { At(60, 40), At(230, 40), At(230, 160), At(60, 160) } },
        Grooves = kind is 1 or 3 ? new Grooves { WidthMm = 2, DepthMm = 2, PitchMm = 20, AngleDeg = 15 * turn, BothWays = turn % 2 == 0 } : null,
        Holes = kind >= 2 ? new Holes { DiameterMm = 3, PitchMm = 40 } : null,
    };

    private static Point At(double x, double y) => new() { XMm = x, YMm = y };
}
