using BenchmarkDotNet.Attributes;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Benchmarks.Grids;

/// <summary>Cutting a round panel with a round hole: outline of 720 corners, 1000 squares across. Target: well below 1 s.</summary>
public class CutCellBenchmarks
{
    private readonly Region region = new(Disc(0.5, 0.5, 0.5, 720), [Disc(0.6, 0.5, 0.1, 90)]);
    private CutCellGrid cells = null!;

    [Params(100, 1000)]
    public int SquaresAcross { get; set; }

    [GlobalSetup]
    public void Prepare() => cells = Build();

    [Benchmark]
    public CutCellGrid Build() => CutCellBuilder.Build(region, 1.0 / SquaresAcross);

    [Benchmark]
    public double[] CoverByAZone() => ZoneCover.AreaInside(Disc(0.5, 0.5, 0.3, 720), cells);

    [Benchmark]
    public double[] CoverByAZoneAlongTheOutline() => ZoneCover.AreaInside(region.Outline, cells);

    private static Ring Disc(double x, double y, double radius, int corners) =>
        new([.. Enumerable.Range(0, corners).Select(k => new Point2(
            x + radius * Math.Cos(0.1 + 2 * Math.PI * k / corners), y + radius * Math.Sin(0.1 + 2 * Math.PI * k / corners)))]);
}
