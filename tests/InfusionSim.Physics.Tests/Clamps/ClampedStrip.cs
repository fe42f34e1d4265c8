using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Clamps;

/// <summary>A strip 500 × 20 × 3 mm, fed at the left, with a vent line at the right; the clock of a plain resin.</summary>
internal static class ClampedStrip
{
    public const double Length = 0.5;
    public const double Width = 0.02;
    public const double Permeability = 1e-10;
    public const double Porosity = 0.5;
    public const double Rate = 5e5;

    public static Panel Panel(double cellSize = 5e-3) => new(
        new Region(new Ring([new(0, 0), new(Length, 0), new(Length, Width), new(0, Width)]), []),
        [new Zone("skin", null, 3e-3, Porosity, new Permeability(Permeability, Permeability, 1e-12, 0))],
        [new Feed("F1", Across(0), 0.012)],
        [new Vent("V1", Across(Length), 0.012, VentKind.Tube)],
        [],
        cellSize);

    public static LinePath Across(double x) => new([new(x, 0), new(x, Width)]);

    /// <summary>Clock at which a straight front has gone a distance from a dry start [-].</summary>
    public static double ClockTo(double distance) => Porosity * distance * distance / (2 * Permeability);

    public static FillMap Fill(Panel panel, Bag? bag = null) => FillMap.Compute(
        FillProblemBuilder.Build(panel), new FillConditions(ClampRules.Of(panel, bag ?? new Bag(1325, 101325), static (time, _) => time * Rate), bag));

    public static Feed Turned(this Feed feed, double openAtStart, params ClampStep[] steps) => feed with { Clamp = new Clamp(openAtStart, steps) };

    public static Vent Turned(this Vent vent, double openAtStart, params ClampStep[] steps) => vent with { Clamp = new Clamp(openAtStart, steps) };
}
