using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Panels;
using InfusionSim.Planning.Mixing;

namespace InfusionSim.Planning.Tests.Resins;

/// <summary>A straight strip of 0.5 × 0.1 m, fed along its left edge and vented along its right one.</summary>
internal static class ResinPanels
{
    /// <summary>The vacuum: a driving pressure of 1e5 Pa.</summary>
    public static readonly Bag Bag = new(1325, 101325);

    /// <summary>A tenth on top of what is drawn, 50 g left in the pot.</summary>
    public static readonly MixWishes Mixing = new(0.1, 0.05, null, 0, null, 333.15);

    /// <summary>Drive clock at which the strip is full: φ L² / (2 K) = 0.5 · 0.25 / 2e-10, derived from Darcy's law with a sharp front.</summary>
    public const double FullClock = 6.25e8;

    /// <summary>The strip.</summary>
    public static Panel Strip() => new(
        new Region(new Ring([new(0, 0), new(0.5, 0), new(0.5, 0.1), new(0, 0.1)]), []),
        [new Zone("skin", null, 3e-3, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0))],
        [new Feed("F1", new LinePath([new(0, 0), new(0, 0.1)]), 0.012)],
        [new Vent("V1", new LinePath([new(0.5, 0), new(0.5, 0.1)]), 0.012, VentKind.Tube)],
        [],
        0.01);

    /// <summary>The strip with its far end raised by five degrees.</summary>
    public static Panel Slope() => Strip() with { Slope = new Slope(0, 5 * Math.PI / 180) };
}
