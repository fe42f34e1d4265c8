using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Laminates;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Planning.Mixing;

namespace InfusionSim.Planning.Tests.Mixing;

/// <summary>Panels whose need is known by hand.</summary>
internal static class SamplePanels
{
    public const double Density = 1100;

    private static readonly Permeability Cloth = new(1e-10, 1e-10, 1e-12, 0);

    /// <summary>A strip of 0.6 × 0.4 m that drinks 396 g in 1800 s from its left edge, straight up to its right one.</summary>
    public static Panel Strip() => new(
        Rectangle(0.6, 0.4), [new("skin", null, 0.003, 0.5, Cloth)], [Edge("F1", 0)], [new("V1", Edge("", 0.6).Path, 0.012, VentKind.Tube)], [], 0.02);

    /// <summary>The same fed from both edges, with a membrane in its middle.</summary>
    public static Panel FedTwice() => Strip() with
    {
        Feeds = [Edge("F1", 0), Edge("F2", 0.6)],
        Vents = [new("V1", Edge("", 0.3).Path, 0.012, VentKind.Membrane)],
    };

    /// <summary>
    /// Two square metres of six plies of glass of 600 g/m² under a mesh of 1 mm, fed through 3 m of hose of 8 mm; a membrane holds the resin.
    /// </summary>
    public static Panel GlassUnderMesh()
    {
        FibreWeight glass = new(0.6, 2560, 6);
        Hose hose = new(0.008, 3);
        return new(
            Rectangle(2, 1), [new("skin", null, Laminate.Of([glass], 0.5, Density).Thickness, 0.5, Cloth) { Fibres = [glass] }],
            [new("F1", new([new(0, 0), new(0, 1)]), 0.012) { Hose = hose }], [new("V1", new([new(2, 0), new(2, 1)]), 0.012, VentKind.Membrane)], [], 0.1)
        {
            FlowMeshes = [new("mesh", null, PanelFace.BagSide, 0.001, 0.85, new(3e-9, 3e-9, 3e-9, 0))],
            SubLayers = 3,
        };
    }

    /// <summary>The forecast of a panel with a resin of 0.2 Pa·s under one bar.</summary>
    public static Forecast Forecast(Panel panel, double gelTime = 1e6) =>
        Forecaster.Predict(panel, new Resin(0.2, gelTime, 0, Density), new Bag(1325, 101325), new Goals(), 1.5);

    /// <summary>The mix sheet of a panel.</summary>
    public static MixSheet Sheet(Panel panel, Forecast forecast, MixInputs inputs) =>
        MixPlanner.Plan(panel, forecast, inputs, time => forecast.Map.StateAt(forecast.Clock.ClockAt(time)));

    /// <summary>Nothing on top of what is drawn.</summary>
    public static MixInputs Bare { get; } = new(Density, 0, new MixWishes(0, 0, null, 0, null, 313.15));

    /// <summary>An invented epoxy that cures at the temperature of the shop; no product.</summary>
    public static CureKinetics InventedEpoxy { get; } =
        new(new ArrheniusRate(1e5, 55e3), new ArrheniusRate(2e5, 50e3), 1, 1.5, 0, 0.577) { Heat = new CureHeat(450e3, 1900) };

    private static Region Rectangle(double width, double height) => new(new([new(0, 0), new(width, 0), new(width, height), new(0, height)]), []);

    private static Feed Edge(string name, double x) => new(name, new([new(x, 0), new(x, 0.4)]), 0.012);
}
