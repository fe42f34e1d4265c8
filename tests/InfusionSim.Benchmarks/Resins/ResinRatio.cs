using InfusionSim.Benchmarks.Filling;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Planning.Mixing;
using InfusionSim.Planning.Resins;

namespace InfusionSim.Benchmarks.Resins;

/// <summary>Ten resins on one panel over one resin on it, in one run, so that it holds on any machine.</summary>
internal static class ResinRatio
{
    private const int Across = 141;
    private const int Count = 10;
    private const int Repeats = 5;

    private static readonly Bag Bag = new(1325, 101325);

    private static readonly MixWishes Mixing = new(0.1, 0.05, null, 0, null, 333.15);

    /// <summary>Prints the ratio where all resins fill, and where half of them gel on the way.</summary>
    /// <param name="output">Where to.</param>
    public static void Print(TextWriter output)
    {
        output.WriteLine($"{Count} resins on a panel of {Across}² squares over one resin on it, time of the processor, middle of {Repeats}");
        Resin[] slow = [.. Enumerable.Range(0, Count).Select(k => new Resin(0.1 + 0.05 * k, 360_000, 360, 1000 + 20 * k))];
        double fill = Forecaster.Predict(BenchmarkPanel.Drawn(Across), slow[0], Bag, new Goals(), 1.5).FillTime!.Value;
        Resin[] mixed = [.. Enumerable.Range(0, Count).Select(k => new Resin(0.1, 360 + fill * (k < Count / 2 ? 0.3 + 0.1 * k : 2 + k), 360, 1100))];
        PrintOne(output, "all fill", slow);
        PrintOne(output, "five gel on the way", mixed);
    }

    private static void PrintOne(TextWriter output, string what, Resin[] resins)
    {
        Panel panel = BenchmarkPanel.Drawn(Across);
        ResinCandidate[] candidates = [.. resins.Select(static resin => new ResinCandidate(resin, Mixing))];
        double[] one = new double[Repeats], all = new double[Repeats];
        for (int repeat = 0; repeat < Repeats; repeat++)
        {
            // One right after the other, so that both meet the same load of the machine.
            one[repeat] = Seconds(() => Forecaster.Predict(panel, resins[^1], Bag, new Goals(), 1.5));
            all[repeat] = Seconds(() => ResinComparison.Of(panel, candidates, Bag, new Goals(), 1.5));
        }

        Array.Sort(one);
        Array.Sort(all);
        output.WriteLine($"  {what,-20} {all[Repeats / 2]:F3} s / {one[Repeats / 2]:F3} s = {all[Repeats / 2] / one[Repeats / 2]:F3} ×");
    }

    // Time of the processor, not of the clock on the wall: what others do on the machine does not count.
    private static double Seconds(Action work)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        work();
        return (Environment.CpuUsage.TotalTime - before).TotalSeconds;
    }
}
