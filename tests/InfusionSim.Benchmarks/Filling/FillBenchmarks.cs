using BenchmarkDotNet.Attributes;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Benchmarks.Filling;

/// <summary>Fifty moments of a fill on one core to an imbalance of 1e-6, and the end of the fill alone.</summary>
[MemoryDiagnoser]
public class FillBenchmarks
{
    private FillProblem _problem = null!;
    private bool[] _reached = null!;
    private double _end;

    [Params(128, 256, 512, 1024)]
    public int Across { get; set; }

    [GlobalSetup]
    public void Cut()
    {
        _problem = BenchmarkPanel.Of(Across);
        _reached = FillRun.ReachedIn(_problem);
        _end = FillTotal.Of(_problem, _reached, FillRun.Tolerance).Clock;
    }

    [Benchmark]
    public int FiftyMoments() => FillRun.FiftyMoments(_problem, _reached, _end);

    [Benchmark]
    public double EndOfTheFill() => FillTotal.Of(_problem, _reached, FillRun.Tolerance).Clock;
}
