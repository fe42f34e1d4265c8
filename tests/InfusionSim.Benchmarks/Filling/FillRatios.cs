using System.Diagnostics;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Benchmarks.Filling;

/// <summary>Comparisons measured in one run, so that they hold on any machine.</summary>
internal static class FillRatios
{
    private const int TimedEvents = 1000;
    private const int Repeats = 5;

    /// <summary>Prints the fill against the cell-by-cell scheme, and how the cost per cell grows with the grid.</summary>
    /// <param name="output">Where to.</param>
    public static void Print(TextWriter output)
    {
        output.WriteLine("Fifty moments of a fill, imbalance 1e-6, one core");
        double smallest = 0;
        foreach (int across in new[] { 96, 128, 256, 512, 1024 })
        {
            (double seconds, int cycles) = Time(BenchmarkPanel.Of(across));
            double perCell = seconds * 1e9 / FillRun.Moments / across / across;
            if (across == 128) smallest = perCell;
            output.WriteLine(
                $"{across,5}²  {seconds,8:F3} s  {perCell,6:F1} ns per cell and moment  {cycles / (double)FillRun.Moments,5:F1} cycles per moment"
                + (smallest > 0 ? $"  {perCell / smallest:F2} × the cost per cell at 128²" : ""));
        }

        (double layered, int layeredCycles) = Time(BenchmarkPanel.Meshed(256));
        output.WriteLine($"  256² under a flow mesh, three sub-layers  {layered:F3} s  {layeredCycles / (double)FillRun.Moments:F1} cycles per moment");
        output.WriteLine("A whole forecast: arrival of every cell, pressures, vents, trapped air, coarser squares");
        foreach (int across in new[] { 128, 141, 256 })
        {
            Stopwatch watch = Stopwatch.StartNew();
            Forecast forecast = Forecaster.Predict(
                BenchmarkPanel.Drawn(across), new Resin(0.2, 36000, 360, 1100), new Bag(1325, 101325), new Goals(), 1.5);
            output.WriteLine($"{across,5}²  {watch.Elapsed.TotalSeconds,8:F3} s  {forecast.Map.Tallies.Count} states");
        }

        output.WriteLine("The same fill, cell by cell on the same multigrid, over the fill in fifty moments");
        Compare(output, 96, projected: false);
        Compare(output, 256, projected: true);
    }

    private static (double Seconds, int Cycles) Time(FillProblem problem)
    {
        bool[] reached = FillRun.ReachedIn(problem);
        double end = FillTotal.Of(problem, reached, FillRun.Tolerance).Clock;
        int cycles = FillRun.FiftyMoments(problem, reached, end);
        double[] seconds = new double[Repeats];
        for (int repeat = 0; repeat < Repeats; repeat++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            FillRun.FiftyMoments(problem, reached, end);
            seconds[repeat] = watch.Elapsed.TotalSeconds;
        }

        Array.Sort(seconds);
        return (seconds[Repeats / 2], cycles);
    }

    private static void Compare(TextWriter output, int across, bool projected)
    {
        FillProblem problem = BenchmarkPanel.Of(across);
        double fill = Time(problem).Seconds;
        int cells = problem.PoreVolume.Count(static volume => volume > 0);
        Stopwatch watch = new();
        double seconds;
        string how = $"projected from {TimedEvents} timed events";
        if (projected)
        {
            // An event costs in proportion to the wet cells, so events are timed in ten places of the fill.
            const int Places = 10;
            double end = FillTotal.Of(problem, FillRun.ReachedIn(problem), FillRun.Tolerance).Clock;
            FillMarcher marcher = new(problem, FillRun.ReachedIn(problem));
            double timed = 0;
            for (int place = 0; place < Places; place++)
            {
                double share = (place + 0.5) / Places;
                CellByCellFill scheme = new(problem, marcher.StateAt(end * share * share, withPressure: true));
                scheme.Step(5);
                watch.Restart();
                scheme.Step(TimedEvents / Places);
                timed += watch.Elapsed.TotalSeconds;
            }

            seconds = timed / TimedEvents * cells;
        }
        else
        {
            CellByCellFill scheme = new(problem);
            watch.Start();
            while (scheme.Step(TimedEvents)) { }
            seconds = watch.Elapsed.TotalSeconds;
            how = $"{scheme.Events} events";
        }

        output.WriteLine($"{across,5}²  {seconds,8:F2} s ({how}) / {fill:F3} s = {seconds / fill:F0} ×");
    }
}
