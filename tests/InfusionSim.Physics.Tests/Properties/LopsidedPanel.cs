using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Properties;

/// <summary>A panel without any symmetry of its own: slanted edge, cut-out, two zones of two permeabilities, lines on the edge and inside, a fitting.</summary>
public static class LopsidedPanel
{
    /// <summary>Extent in x [m].</summary>
    public const double Width = 0.30;

    /// <summary>Extent in y [m].</summary>
    public const double Height = 0.20;

    /// <summary>The resin.</summary>
    public const double Viscosity = 0.25;

    public static Resin Resin { get; } = new(Viscosity, 1e7, 0, 1100);

    /// <summary>The bag.</summary>
    public static Bag Bag { get; } = new(2000, 101000);

    /// <summary>The panel.</summary>
    /// <param name="kind">What its vent lets through.</param>
    public static Panel Of(VentKind kind) => new(
        new Region(
            new Ring([new(0, 0), new(Width, 0), new(Width, 0.12), new(0.21, Height), new(0, Height)]),
            [new Ring([new(0.11, 0.05), new(0.17, 0.05), new(0.15, 0.11)])]),
        [
            new Zone("skin", null, 3e-3, 0.5, new Permeability(2e-10, 1e-10, 1e-12, 0)),
            new Zone("patch", new Ring([new(0.2, 0), new(Width, 0), new(Width, 0.07), new(0.2, 0.07)]), 5e-3, 0.4, new Permeability(4e-11, 6e-11, 1e-12, 0)),
        ],
        [
            new Feed("F1", new LinePath([new(0, 0.02), new(0, 0.16)]), 0.012),
            new Feed("F2", new LinePath([new(0.07, 0.134), new(0.12, 0.167)]), 0.012),
        ],
        [new Vent("V1", new LinePath([new(0.265, 0.045)]), 0.002, kind)],
        [new TimingMark("M1", new Point2(0.2, 0.1))],
        0.01);

    /// <summary>A panel with every place, length and axis put through a map of the plane.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="place">Where a place goes.</param>
    /// <param name="length">What a length is multiplied by [-].</param>
    /// <param name="angle">Where an axis goes [rad].</param>
    public static Panel Mapped(this Panel panel, Func<Point2, Point2> place, double length, Func<double, double> angle)
    {
        return new(
            new Region(Ring(panel.Region.Outline), [.. panel.Region.Cutouts.Select(Ring)]),
            [.. panel.Zones.Select(zone => zone with
            {
                Area = zone.Area is null ? null : Ring(zone.Area),
                Thickness = zone.Thickness * length,
                Permeability = zone.Permeability with { Angle = angle(zone.Permeability.Angle) },
            })],
            [.. panel.Feeds.Select(feed => feed with { Path = Path(feed.Path), ContactWidth = feed.ContactWidth * length })],
            [.. panel.Vents.Select(vent => vent with { Path = Path(vent.Path), ContactWidth = vent.ContactWidth * length })],
            [.. panel.TimingMarks.Select(mark => mark with { At = place(mark.At) })],
            panel.CellSize * length);

        Ring Ring(Ring ring) => new([.. ring.Corners.Select(place)]);

        LinePath Path(LinePath path) => new([.. path.Points.Select(place)]);
    }

    /// <summary>A panel whose permeabilities are all multiplied by a factor.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="factor">The factor [-].</param>
    public static Panel WithPermeabilityTimes(this Panel panel, double factor) => panel with
    {
        Zones = [.. panel.Zones.Select(zone => zone with
        {
            Permeability = zone.Permeability with { K1 = zone.Permeability.K1 * factor, K2 = zone.Permeability.K2 * factor, K3 = zone.Permeability.K3 * factor },
        })],
    };

    /// <summary>Forecast of a panel; no resin is lost in it.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="resin">The resin; null for this panel's own.</param>
    /// <param name="bag">The bag; null for this panel's own.</param>
    /// <param name="goals">The goals; null for the usual ones.</param>
    public static Forecast Predict(this Panel panel, Resin? resin = null, Bag? bag = null, Goals? goals = null)
    {
        Forecast forecast = Forecaster.Predict(panel, resin ?? Resin, bag ?? Bag, goals ?? new Goals(), 1.5);
        Math.Abs(forecast.MassBalanceError).ShouldBeLessThanOrEqualTo(1e-9);
        ShouldLoseNothing(forecast.Map);
        return forecast;
    }

    /// <summary>Fill map of a panel; no resin is lost in it.</summary>
    /// <param name="panel">The panel.</param>
    public static FillMap Map(this Panel panel)
    {
        FillMap map = FillMap.Compute(FillProblemBuilder.Build(panel));
        ShouldLoseNothing(map);
        return map;
    }

    // States along the way are computed to a coarser tolerance than a forecast.
    private static void ShouldLoseNothing(FillMap map) => map.Tallies.ShouldAllBe(tally => Math.Abs(tally.MassBalanceError) <= 1e-6);
}
