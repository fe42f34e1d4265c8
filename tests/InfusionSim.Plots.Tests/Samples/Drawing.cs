using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Samples;

/// <summary>Short ways to write a plan's shapes in a test.</summary>
internal static class Drawing
{
    internal static Point At(double x, double y) => new() { XMm = x, YMm = y };

    internal static Ring Ring(params (double X, double Y)[] corners) => new() { Points = { corners.Select(corner => At(corner.X, corner.Y)) } };

    internal static Protocol.V1.Path Path(params (double X, double Y)[] corners) => new() { Points = { corners.Select(corner => At(corner.X, corner.Y)) } };

    internal static Ring Box(double left, double bottom, double right, double top) =>
        Ring((left, bottom), (right, bottom), (right, top), (left, top));

    internal static Ring Disc(double x, double y, double radius, int corners) =>
        Ring([.. Enumerable.Range(0, corners).Select(i => 2 * Math.PI * i / corners).Select(a => (x + radius * Math.Cos(a), y + radius * Math.Sin(a)))]);

    internal static InfusionPlan Plan(string title, Ring outline, params Ring[] cutouts) => new()
    {
        Title = title,
        Preform = new Preform
        {
            Outline = outline,
            Cutouts = { cutouts },
            Zones = { new Zone { Name = "skin", ThicknessMm = 3, Porosity = 0.5, Permeability = new Permeability { K1M2 = 1e-10 } } },
        },
        Resin = new Resin { ViscosityPaS = 0.2, GelTimeMin = 60, MixToOpenMin = 6, DensityKgPerM3 = 1100 },
        Bag = new Bag { PressureMbarAbs = 13.25, AmbientMbarAbs = 1013.25 },
    };
}
